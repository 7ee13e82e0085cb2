using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim.Traces;

/// <summary>Reads of a recording what a plan needs.</summary>
public static class PlannedTrace
{
    /// <summary>Reads a recording as the plan says, and keeps only the columns that the plan names.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="path">The file; <c>-</c> is standard input.</param>
    /// <param name="cancel">Stops reading.</param>
    /// <exception cref="InputException">The recording cannot be read, or lacks a column.</exception>
    public static Trace Read(Plan plan, string path, CancellationToken cancel = default) => TraceReader.Read(path, DialectOf(plan.Trace), Columns(plan), cancel: cancel);

    /// <summary>What the plan says about how the recording is written.</summary>
    public static Dialect DialectOf(TraceFormat format) => new()
    {
        Delimiter = format.Delimiter is { Length: > 0 } delimiter ? delimiter[0] : null,
        Decimal = format.Decimal is { Length: > 0 } mark ? mark[0] : null,
        SkipRows = format.SkipRows,
        UnitsRow = format.UnitsRow,
        Encoding = format.Encoding,
        TimeColumn = format.Time?.Column,
        TimeUnit = format.Time?.Unit,
        Rate = format.Rate?.Exact,
    };

    /// <summary>The columns that the plan's channels and signals name.</summary>
    public static IReadOnlyList<ColumnRequest> Columns(Plan plan) =>
        [.. Inputs.ChannelColumns(plan).Select(column => new ColumnRequest(column, ColumnKind.Number)),
         .. plan.Signals.Values.Select(signal => signal.Column).OfType<string>().Distinct(StringComparer.Ordinal).Select(column => new ColumnRequest(column, ColumnKind.Word))];
}
