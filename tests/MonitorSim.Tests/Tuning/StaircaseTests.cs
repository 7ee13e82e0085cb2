using Fractions;
using FsCheck.Xunit;
using MonitorSim.Channels;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class StaircaseTests
{
    /// <summary>In whatever order stretches come, the steps are those that no other stretch beats: none lasts as long and has as high a limit.</summary>
    [Property(MaxTest = 500)]
    public void KeepsWhatNothingBeats(byte[] stretches)
    {
        var limits = new RecordedChannel(new Numbers(new NumberColumn("x", null, [.. Enumerable.Range(0, 16).Select(limit => (double)limit)]), hold: false), Fraction.One, Fraction.Zero);
        var found = new Staircase();
        for (var k = 0; k < stretches.Length; k++) found.Add(stretches[k] >> 4, Reading.Of(limits, stretches[k] & 15), k, k + (stretches[k] >> 4));
        var all = stretches.Select((stretch, k) => (Filter: stretch >> 4, Limit: stretch & 15, From: k)).ToList();
        Assert.Equal(
            all.Where(one => !all.Any(other => other.Filter >= one.Filter && other.Limit >= one.Limit && (other.From < one.From || other.Filter > one.Filter || other.Limit > one.Limit)))
                .OrderBy(one => one.Filter).Select(one => ((long)one.Filter, (double)one.Limit, (long)one.From, (long)one.From + one.Filter)),
            found.Steps.Select(step => (step.Filter, step.Limit.Value, step.From, step.Until)));
    }
}
