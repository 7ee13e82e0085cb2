using System.Globalization;

namespace MonitorSim.Explain;

/// <summary>Numbers in sentences, the same in every culture.</summary>
internal static class Say
{
    public static string Seconds(decimal time) => time.ToString("0.#########", CultureInfo.InvariantCulture) + " s";

    public static string Percent(double share) => share.ToString("0.#", CultureInfo.InvariantCulture) + " %";

    public static string Count(int number, string noun) => $"{number.ToString(CultureInfo.InvariantCulture)} {noun}{(number == 1 ? "" : "s")}";

    public static string Level(int? level, MonitorFacts facts) => level is not { } index ? ""
        : $" (level {index.ToString(CultureInfo.InvariantCulture)}{(facts.LevelCondition(index) is { } when ? $", when {when}" : "")})";

    /// <summary>a or an.</summary>
    public static string A(string noun) => ("aeiou".Contains(noun[0], StringComparison.Ordinal) ? "an " : "a ") + noun;
}
