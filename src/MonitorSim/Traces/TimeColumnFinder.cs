using System.Text;

namespace MonitorSim.Traces;

/// <summary>Finds the time column and its unit.</summary>
internal sealed class TimeColumnFinder(string file, Dialect given, List<string> notes)
{
    private const string HowTo = "name it in the plan, \"trace\": { \"time\": { \"column\": \"…\", \"unit\": \"s\" } }, or give \"rate\": \"1 kHz\"";

    /// <exception cref="InputException">There is no such column, none that could be the time, or its unit is unknown.</exception>
    public (int Index, string Unit) Find(string[] names, string?[] units, List<HeadRow> samples)
    {
        var index = given.TimeColumn is { } wanted ? Named(wanted, names) : Likely(names, samples);
        var unit = given.TimeUnit;
        if (unit is null)
        {
            // Date-times are told by the first cell that is there.
            var first = samples.Select(r => r.Cells[index]).FirstOrDefault(c => c.Length > 0);
            if (first is not null && IsDateTime(first)) unit = TimeUnits.Iso;
            unit ??= units[index] ?? HeaderText.Guessed(names[index]);
            if (unit is null)
            {
                unit = "s";
                notes.Add($"the time in '{names[index]}' is taken to be in s, because nothing says its unit");
            }
        }

        if (!TimeUnits.IsIso(unit) && TimeUnits.PowerToNanoseconds(unit) is null)
            throw new InputException(new Problem($"{file}(column '{names[index]}')", $"the time's unit '{unit}' is not known", TimeUnits.WouldDo));
        return (index, unit);
    }

    private int Named(string wanted, string[] names)
    {
        var index = Array.IndexOf(names, wanted);
        if (index < 0) throw new InputException(Missing(file, wanted, names, "time column"));
        if (Array.LastIndexOf(names, wanted) != index)
            throw new InputException(new Problem(file, $"two columns are called '{wanted}'", "name each column once"));
        return index;
    }

    private int Likely(string[] names, List<HeadRow> samples)
    {
        var index = Array.FindIndex(names, HeaderText.IsTime);
        if (index < 0)
        {
            index = Array.FindIndex(Enumerable.Range(0, names.Length).ToArray(),
                i => samples.Count > 0 && samples.All(r => IsDateTime(r.Cells[i])));
        }

        if (index < 0)
        {
            throw new InputException(new Problem(file,
                $"there is no time column and no rate; the columns are {Listed(names)}", HowTo));
        }

        notes.Add($"the time is taken from '{names[index]}'");
        return index;
    }

    /// <summary>A problem that says which column is not there, and the closest name.</summary>
    public static Problem Missing(string file, string wanted, string[] names, string what) => new(file, $"there is no {what} '{wanted}'",
        NearestName.Of(wanted, names) is { } near ? $"did you mean '{near}'?" : $"the columns are {Listed(names)}");

    private static string Listed(string[] names) =>
        string.Join(", ", names.Take(20).Select(n => $"'{n}'")) + (names.Length > 20 ? $" and {names.Length - 20} more" : "");

    private static bool IsDateTime(string cell) => IsoDateTime.Parse(Encoding.UTF8.GetBytes(cell)) is not null;
}
