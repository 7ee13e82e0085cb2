using System.Globalization;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Synthesis;

/// <summary>Turns a profile into a recording.</summary>
internal sealed class ProfileSampler(Profile profile)
{
    public const string Position = "position";
    public const string Velocity = "velocity";
    private const int MostSamples = 100_000_000;
    private static readonly string[] Words = ["false", "true"];
    private readonly string _si = profile.Units.IsRotary == true ? "rad" : "m";

    /// <summary>Seconds in integer nanoseconds, halves up.</summary>
    public static long Nanoseconds(decimal seconds) => (long)Math.Floor(seconds * 1_000_000_000 + 0.5m);

    public Trace Sample(string name)
    {
        var times = Times(name);
        var (positions, velocities) = Motion(times);
        Spoil(positions, times, ofVelocity: false);
        Spoil(velocities, times, ofVelocity: true);
        List<Column> columns =
        [
            Numbers(Position, positions, times, profile.PositionUnit ?? Unit.Parse(_si), profile.PositionResolution),
            Numbers(Velocity, velocities, times, profile.VelocityUnit ?? Unit.Parse(_si + "/s"), profile.VelocityResolution),
        ];
        columns.AddRange(profile.Signals.Select(mark => mark.Signal).Distinct(StringComparer.Ordinal).Select(signal => Signal(signal, times)));
        return new Trace(name, times, columns);
    }

    private long[] Times(string name)
    {
        var end = Nanoseconds(profile.Motion.Time);
        if (profile.Motion.Time * profile.Rate.Exact.ToDecimal() >= MostSamples)
            throw new InputException(new Problem(name, FormattableString.Invariant($"{profile.Motion.Time:0.###} s at {profile.Rate} are more than {MostSamples} samples"), "sample a shorter profile, or less often"));
        var clock = new RateClock(profile.Rate.Exact, name);
        var times = new List<long>();
        for (var time = clock.Next(); time <= end; time = clock.Next()) times.Add(time);
        return [.. times];
    }

    private (decimal[] Positions, decimal[] Velocities) Motion(long[] times)
    {
        var positions = new decimal[times.Length];
        var velocities = new decimal[times.Length];
        Phase[] phases = [.. profile.Motion.Phases];
        for (int k = 0, phase = 0; k < times.Length; k++)
        {
            var time = times[k] / 1_000_000_000m;
            while (phase < phases.Length && time >= phases[phase].End) phase++;
            var isOver = phase == phases.Length;
            positions[k] = isOver ? profile.Motion.Position : phases[phase].PositionAt(time - phases[phase].Start);
            velocities[k] = isOver ? profile.Motion.Velocity : phases[phase].VelocityAt(time - phases[phase].Start);
        }

        return (positions, velocities);
    }

    private void Spoil(decimal[] values, long[] times, bool ofVelocity)
    {
        var marks = profile.Noises.Where(mark => mark.OfVelocity == ofVelocity).ToList();
        if (marks.Count == 0) return;
        for (int k = 0, next = 0; k < times.Length; k++)
        {
            while (next < marks.Count && marks[next].From <= times[k]) next++;
            if (next > 0 && marks[next - 1] is { Deviation: > 0 } mark) values[k] += mark.Deviation * Noise.At(mark.Seed, k);
        }
    }

    private NumberColumn Numbers(string name, decimal[] si, long[] times, Unit unit, Quantity? resolution)
    {
        var factor = unit.Factor.ToDecimal();
        var step = resolution is null ? 0.000_000_001m / factor : unit.FromSi(resolution.Exact).ToDecimal();

        // In other units than SI the default step need not be a decimal of few digits; the next smaller power of ten is.
        if (resolution is null) step = (decimal)Math.Pow(10, Math.Floor(Math.Log10((double)step) + 1e-9));
        var values = new double[si.Length];
        for (var k = 0; k < si.Length; k++)
        {
            // The double nearest to the decimal, so that the shortest decimal of the double is that decimal again.
            var rounded = Math.Round(si[k] / factor / step, MidpointRounding.AwayFromZero) * step;
            values[k] = double.Parse(rounded.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        }

        foreach (var dropOut in profile.DropOuts)
            for (var k = 0; k < values.Length; k++)
                if (dropOut.From <= times[k] && times[k] < dropOut.Until) values[k] = double.NaN;
        return new NumberColumn(name, unit.Symbol, values);
    }

    private WordColumn Signal(string name, long[] times)
    {
        var marks = profile.Signals.Where(mark => mark.Signal == name).ToList();
        var codes = new int[times.Length];
        for (int k = 0, next = 0; k < codes.Length; k++)
        {
            while (next < marks.Count && marks[next].From <= times[k]) next++;
            codes[k] = next > 0 && marks[next - 1].On ? 1 : 0;
        }

        return new WordColumn(name, codes, Words);
    }
}
