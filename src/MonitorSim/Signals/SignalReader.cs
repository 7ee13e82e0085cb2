using System.Globalization;
using Fractions;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Signals;

/// <summary>Turns the cells of a signal's column, or its windows of time, into true and false.</summary>
internal sealed class SignalReader
{
    private readonly SignalPlan _plan;
    private readonly (long From, long Until)[] _windows;
    private readonly Fraction? _equalNumber;

    public SignalReader(SignalPlan plan)
    {
        _plan = plan;
        _windows = plan.Windows?.Select(w => (w[0].Nanoseconds, w[1].Nanoseconds)).ToArray() ?? [];
        if (plan.EqualTo is not null && TryNumber(plan.EqualTo, out var number)) _equalNumber = number;
    }

    public bool HasWindows => _plan.Column is null;

    /// <summary>True where from &lt;= time &lt; until for any window.</summary>
    public bool InWindow(long time)
    {
        foreach (var (from, until) in _windows)
            if (from <= time && time < until) return true;
        return false;
    }

    /// <summary>The value of a word; null where it is neither true nor false.</summary>
    public bool? OfWord(string word)
    {
        word = word.Trim();
        if (_plan.EqualTo is not null)
        {
            return _equalNumber is { } expected && TryNumber(word, out var number)
                ? number == expected
                : string.Equals(word, _plan.EqualTo.Trim(), StringComparison.OrdinalIgnoreCase);
        }

        return word.ToLowerInvariant() switch
        {
            "1" or "true" or "on" => true,
            "0" or "false" or "off" => false,
            _ => TryNumber(word, out var number) && (number == Fraction.Zero || number == Fraction.One) ? number == Fraction.One : null,
        };
    }

    /// <summary>The value of a number; null where it is neither true nor false.</summary>
    public bool? OfNumber(Fraction number) =>
        _plan.EqualTo is not null ? _equalNumber == number
        : number == Fraction.One ? true
        : number == Fraction.Zero ? false
        : null;

    /// <summary>The whole column as a track; a missing cell holds the value before, false at first.</summary>
    /// <exception cref="InputException">Cells that are neither true nor false.</exception>
    public Track Read(string signal, Trace trace)
    {
        var track = new Track();
        if (HasWindows)
        {
            for (var k = 0; k < trace.Count; k++) track.Set(k, InWindow(trace.Times[k]));
            return track;
        }

        var unclear = new List<(int Sample, string Text)>();
        switch (trace.Find(_plan.Column!))
        {
            case WordColumn words:
                var values = words.Words.Select(OfWord).ToArray();
                for (var k = 0; k < words.Count; k++)
                {
                    if (words.Codes[k] < 0) continue;
                    if (values[words.Codes[k]] is { } value) track.Set(k, value);
                    else unclear.Add((k, words.Words[words.Codes[k]]));
                }

                break;
            case NumberColumn numbers:
                for (var k = 0; k < numbers.Count; k++)
                {
                    if (numbers.IsMissing(k)) continue;
                    if (OfNumber(numbers.Exact(k)) is { } value) track.Set(k, value);
                    else unclear.Add((k, numbers.Values[k].ToString("R", CultureInfo.InvariantCulture)));
                }

                break;
            default:
                throw new InputException(new Problem(trace.Name, $"there is no column '{_plan.Column}' for the signal '{signal}'",
                    $"the columns are {string.Join(", ", trace.Columns.Select(c => $"'{c.Name}'"))}"));
        }

        if (unclear.Count > 0)
        {
            throw new InputException([.. unclear.Take(10).Select(u => new Problem($"{trace.Name}(sample {u.Sample}, column '{_plan.Column}')",
                $"'{u.Text}' is neither true nor false" + (unclear.Count > 10 && u == unclear[9] ? $" (and {unclear.Count - 10} more)" : ""),
                "write 0/1, true/false or on/off, or give the signal an \"equals\""))]);
        }

        return track;
    }

    private static bool TryNumber(string text, out Fraction number) =>
        Fraction.TryParse(text.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out number);
}
