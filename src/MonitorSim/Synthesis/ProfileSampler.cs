using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Synthesis;

/// <summary>A profile at the times of samples: true values, those with the profile's own noise, its drop-outs and signals.</summary>
/// <param name="profile">The profile.</param>
/// <param name="times">When.</param>
/// <param name="seed">Changes all noise; 0 leaves it as the profile has it.</param>
internal sealed class ProfileSampler(Profile profile, SampleMoments times, int seed = 0)
{
    public const string Position = "position";
    public const string Velocity = "velocity";
    private static readonly string[] Words = ["false", "true"];

    /// <summary>The recording of a profile alone.</summary>
    public static Trace Sample(Profile profile, string name)
    {
        var times = SampleMoments.Even(profile.Rate, profile.Motion.Time, name);
        var sampler = new ProfileSampler(profile, times);
        List<Column> columns =
        [
            sampler.Column(Position, ScenarioQuantity.Position, profile.PositionUnit, profile.PositionResolution),
            sampler.Column(Velocity, ScenarioQuantity.Velocity, profile.VelocityUnit, profile.VelocityResolution),
        ];
        columns.AddRange(profile.Signals.Select(mark => mark.Signal).Distinct(StringComparer.Ordinal).Select(sampler.Signal));
        return new Trace(name, times.Nanoseconds, columns);
    }

    /// <summary>Position, velocity or acceleration, SI, with the profile's noise.</summary>
    public decimal[] Values(ScenarioQuantity quantity)
    {
        var values = TrueValues(quantity);
        if (quantity is ScenarioQuantity.Position or ScenarioQuantity.Velocity) Spoil(values, ofVelocity: quantity == ScenarioQuantity.Velocity);
        return values;
    }

    /// <summary>Position, velocity or acceleration, SI.</summary>
    public decimal[] TrueValues(ScenarioQuantity quantity)
    {
        var values = new decimal[times.Nanoseconds.Length];
        Phase[] phases = [.. profile.Motion.Phases];
        for (int k = 0, phase = 0; k < values.Length; k++)
        {
            var time = times.Nanoseconds[k] / 1_000_000_000m;
            while (phase < phases.Length && time >= phases[phase].End) phase++;
            values[k] = phase == phases.Length ? Beyond(quantity, time) : Within(phases[phase], quantity, time);
        }

        return values;
    }

    /// <summary>A column of position or velocity.</summary>
    public NumberColumn Column(string name, ScenarioQuantity quantity, Unit? unit, Quantity? resolution)
    {
        var values = RoundedColumn.Round(Values(quantity), unit ?? SiUnit(quantity), resolution);
        Empty(values);
        return new(name, (unit ?? SiUnit(quantity)).Symbol, values);
    }

    /// <summary>Empties the cells that drop out.</summary>
    public void Empty(double[] values)
    {
        foreach (var dropOut in profile.DropOuts)
            for (var k = 0; k < values.Length; k++)
                if (dropOut.From <= times.Nanoseconds[k] && times.Nanoseconds[k] < dropOut.Until) values[k] = double.NaN;
    }

    /// <summary>The SI unit of a quantity of the profile's axis.</summary>
    public Unit SiUnit(ScenarioQuantity quantity) => quantity == ScenarioQuantity.Torque
        ? Unit.Parse(profile.Units.IsRotary == true ? "N·m" : "N")
        : Unit.Parse((profile.Units.IsRotary == true ? "rad" : "m") + quantity switch { ScenarioQuantity.Position => "", ScenarioQuantity.Velocity => "/s", _ => "/s²" });

    /// <summary>A signal that the profile switches.</summary>
    public WordColumn Signal(string name)
    {
        var marks = profile.Signals.Where(mark => mark.Signal == name).ToList();
        var on = new bool[times.Nanoseconds.Length];
        for (int k = 0, next = 0; k < on.Length; k++)
        {
            while (next < marks.Count && marks[next].From <= times.Nanoseconds[k]) next++;
            on[k] = next > 0 && marks[next - 1].On;
        }

        return Signal(name, on);
    }

    /// <summary>A signal's column.</summary>
    public static WordColumn Signal(string name, bool[] on) => new(name, [.. on.Select(value => value ? 1 : 0)], Words);

    private static decimal Within(Phase phase, ScenarioQuantity quantity, decimal time) => quantity switch
    {
        ScenarioQuantity.Position => phase.PositionAt(time - phase.Start),
        ScenarioQuantity.Velocity => phase.VelocityAt(time - phase.Start),
        _ => phase.AccelerationAt(time - phase.Start),
    };

    // It goes on with its last speed; a sample can come so late because its time was rounded, or jitters.
    private decimal Beyond(ScenarioQuantity quantity, decimal time) => quantity switch
    {
        ScenarioQuantity.Position => profile.Motion.Position + profile.Motion.Velocity * (time - profile.Motion.Time),
        ScenarioQuantity.Velocity => profile.Motion.Velocity,
        _ => 0,
    };

    private void Spoil(decimal[] values, bool ofVelocity)
    {
        var marks = profile.Noises.Where(mark => mark.OfVelocity == ofVelocity).ToList();
        if (marks.Count == 0) return;
        for (int k = 0, next = 0; k < values.Length; k++)
        {
            while (next < marks.Count && marks[next].From <= times.Nanoseconds[k]) next++;
            if (next > 0 && marks[next - 1] is { Deviation: > 0 } mark) values[k] += mark.Deviation * Noise.At(mark.Seed ^ (ulong)(uint)seed << 33, times.Numbers[k]);
        }
    }
}
