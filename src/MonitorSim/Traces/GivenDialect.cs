namespace MonitorSim.Traces;

/// <summary>Checks what a plan or caller says about a recording, before anything is read.</summary>
internal static class GivenDialect
{
    /// <exception cref="InputException">A member cannot be used.</exception>
    public static void Check(Dialect dialect, string place)
    {
        var problems = new List<Problem>();
        void Bad(string what, string fix) => problems.Add(new Problem(place, what, fix));

        if (dialect.Delimiter is { } delimiter && (delimiter > 126 || delimiter is '"' or '\r' or '\n' or '\0'))
            Bad($"the delimiter '{delimiter}' cannot separate cells", "would do: comma, semicolon, tab, vertical bar, or another ASCII character");
        if (dialect.Decimal is { } mark && mark is not ('.' or ','))
            Bad($"the decimal mark '{mark}' is not known", "would do: point or comma");
        if (dialect.SkipRows < 0) Bad($"skipRows is {dialect.SkipRows}", "give 0 or more");
        if (dialect.TimeColumn is not null && dialect.Rate is not null) Bad("both a time column and a rate are given", "give one of them");
        if (dialect.TimeUnit is { } unit && !TimeUnits.IsIso(unit) && TimeUnits.PowerToNanoseconds(unit) is null)
            Bad($"the time's unit '{unit}' is not known", TimeUnits.WouldDo);
        if (problems.Count > 0) throw new InputException(problems);
    }
}
