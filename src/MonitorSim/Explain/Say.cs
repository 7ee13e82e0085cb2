using System.Globalization;
using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Explain;

/// <summary>Numbers in sentences, the same in every culture.</summary>
internal static class Say
{
    // Times are exact to the nanosecond: as many digits as a day of them takes.
    private const int DurationDigits = 15;

    private static readonly Unit Second = Unit.Parse("s"), Millisecond = Unit.Parse("ms");

    public static string Seconds(decimal time) => time.ToString("0.#########", CultureInfo.InvariantCulture) + " s";

    /// <summary>How long something lasted, in the unit of what it is held against; without that in milliseconds below a second, else in seconds.</summary>
    public static string Duration(decimal seconds, Quantity? heldAgainst = null) =>
        (heldAgainst?.Unit ?? (seconds < 1 ? Millisecond : Second)).Format((Fraction)seconds, DurationDigits);

    public static string Percent(double share) => share.ToString("0.#", CultureInfo.InvariantCulture) + " %";

    public static string Count(int number, string noun) => $"{number.ToString(CultureInfo.InvariantCulture)} {noun}{(number == 1 ? "" : "s")}";

    public static string Level(int? level, MonitorFacts facts) => level is not { } index ? ""
        : $" (level {index.ToString(CultureInfo.InvariantCulture)}{(facts.LevelCondition(index) is { } when ? $", when {when}" : "")})";

    /// <summary>The same, at the beginning of a sentence.</summary>
    public static string Sentence(string phrase) => char.ToUpperInvariant(phrase[0]) + phrase[1..];

    /// <summary>a or an.</summary>
    public static string A(string noun) => ("aeiou".Contains(noun[0], StringComparison.Ordinal) ? "an " : "a ") + noun;
}
