namespace MonitorSim.Tests.Model;

/// <summary>Random requests over signals, outputs, latched trips and states.</summary>
/// <param name="dice">The choices.</param>
/// <param name="signals">Names of signals.</param>
/// <param name="monitors">Axis and name of all monitors.</param>
/// <param name="axes">Names of axes.</param>
internal sealed class RandomExpressions(Dice dice, IReadOnlyList<string> signals, IReadOnlyList<(string Axis, string Monitor)> monitors, IReadOnlyList<string> axes)
{
    private static readonly string[] States = [.. Enum.GetNames<ModelState>()];

    public string Next(int depth = 2)
    {
        var kind = depth == 0 ? 0 : dice.Next(10);
        return kind switch
        {
            6 => $"not {Inner(depth)}",
            7 => $"{Inner(depth)} and {Inner(depth)}",
            8 or 9 => $"{Inner(depth)} or {Inner(depth)}",
            _ => Atom(),
        };
    }

    /// <summary>A request of a stop: mostly a signal, so that it goes again.</summary>
    public string Stop() => dice.Chance(80) ? Signal() : Next(1);

    private string Inner(int depth) => dice.Chance(50) ? $"({Next(depth - 1)})" : Next(0);

    private string Signal() => Name(dice.Pick(signals));

    private string Atom()
    {
        switch (dice.Next(20))
        {
            case 0 or 1: return "always";
            case 2: return dice.Chance(30) ? "never" : Signal();
            case 3 or 4 or 5 when monitors.Count > 0:
                var (axis, monitor) = dice.Pick(monitors);
                return $"{Name(axis)}.{Name(monitor)}";
            case 6 or 7: return $"{Name(dice.Pick(axes))}.state {dice.Pick("==", "==", "!=")} {dice.Pick(States)}";
            default: return Signal();
        }
    }

    private static string Name(string name) => name.All(c => char.IsAsciiLetterOrDigit(c) || c == '_') ? name : $"\"{name}\"";
}
