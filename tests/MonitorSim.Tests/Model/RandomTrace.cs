using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Model;

/// <summary>How a random recording is written: its times, its dialect, missing cells and gaps.</summary>
internal sealed class RandomTrace
{
    private readonly Dice _dice;
    private readonly bool _isComma;
    private readonly char _delimiter;
    private readonly bool _hasUnitsRow;
    private readonly int _skipped;
    private readonly string? _rate;
    private readonly string _timeUnit;
    private readonly List<(string Name, string[] Cells)> _columns = [];

    public RandomTrace(Dice dice)
    {
        _dice = dice;
        Count = dice.Next(20, 60);
        Step = dice.Pick(1_000_000L, 2_000_000L, 4_000_000L, 5_000_000L);
        Missing = dice.Pick(null, null, null, "hold", "trip", "trip");
        _isComma = dice.Chance(40);
        _delimiter = _isComma ? dice.Pick(';', '\t') : dice.Pick(',', ';', '\t');
        (_hasUnitsRow, _skipped) = (dice.Chance(20), dice.Chance(20) ? dice.Next(1, 3) : 0);
        _rate = dice.Chance(20) ? dice.Pick("1 kHz", "250 Hz", "300 Hz") : null;
        _timeUnit = dice.Pick("ms", "s", "us");
        var time = dice.Next(5) * Step;
        var isJittering = dice.Chance(30);
        for (var k = 0; k < Count; k++)
        {
            Times.Add(time);
            time += isJittering && dice.Chance(40) ? dice.Pick(Step / 2, Step * 3 / 2, Step - 1, Step + 250_000) : Step;
            if (Missing == "trip" && dice.Chance(4)) time += 7 * Step;
        }

        if (_rate is not null) Step = 1_000_000_000 / int.Parse(_rate.Split(' ')[0], CultureInfo.InvariantCulture) / (_rate.EndsWith("kHz", StringComparison.Ordinal) ? 1000 : 1);
    }

    public int Count { get; }

    /// <summary>The usual step, ns.</summary>
    public long Step { get; }

    public List<long> Times { get; } = [];

    public string? Missing { get; }

    public void Add(string name, IEnumerable<decimal?> numbers) => Add(name, numbers.Select(x => x is { } value ? Number(value) : ""), mayLack: true);

    public void Add(string name, IEnumerable<string> cells, bool mayLack = false)
    {
        var all = cells.ToArray();
        for (var k = 1; k < all.Length; k++)
            if (mayLack && Missing is not null && _dice.Chance(2)) all[k] = _dice.Pick("", "NaN");
        if (mayLack && Missing == "trip" && _dice.Chance(3)) all[0] = "NaN";
        _columns.Add((name, all));
    }

    /// <summary>How the plan says to read it.</summary>
    public JsonObject Format()
    {
        var format = new JsonObject { ["delimiter"] = _delimiter.ToString(), ["decimal"] = _isComma ? "," : "." };
        if (_rate is null) format["time"] = new JsonObject { ["column"] = "Time", ["unit"] = _timeUnit };
        else format["rate"] = _rate;
        if (_skipped > 0) format["skipRows"] = _skipped;
        if (_hasUnitsRow) format["unitsRow"] = true;
        return format;
    }

    public string Csv()
    {
        _dice.Shuffle(_columns);
        var columns = _rate is null ? _columns.Prepend(("Time", [.. Times.Select(TimeText)])).ToList() : _columns;
        var text = new StringBuilder();
        for (var i = 0; i < _skipped; i++) text.Append("recorded for a test\n");
        text.AppendJoin(_delimiter, columns.Select(column => column.Item1)).Append('\n');
        if (_hasUnitsRow) text.AppendJoin(_delimiter, columns.Select(_ => "-")).Append('\n');
        for (var k = 0; k < Count; k++) text.AppendJoin(_delimiter, columns.Select(column => column.Item2[k])).Append('\n');
        return text.ToString();
    }

    private string TimeText(long time) => Number(time / _timeUnit switch { "s" => 1_000_000_000m, "ms" => 1_000_000m, _ => 1000m });

    private string Number(decimal value)
    {
        var text = value.ToString("0.##########", CultureInfo.InvariantCulture);
        return _isComma ? text.Replace('.', ',') : text;
    }
}
