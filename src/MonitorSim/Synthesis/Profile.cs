using System.Collections.Immutable;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Synthesis.Steps;

namespace MonitorSim.Synthesis;

/// <summary>Synthetic motion of one axis, written in the order in which it happens, for testing trip logic in C#.</summary>
/// <remarks>
/// A profile begins at rest at position 0 and time 0. <see cref="Hold"/>, <see cref="RampTo"/>, <see cref="MoveBy"/>, <see cref="MoveTo"/>, <see cref="Sine"/> and <see cref="Coast"/> take time; signals, noise
/// and drop-outs begin at the moment at which they are written. Whether the axis is linear or rotary follows from the units. A profile never
/// changes: each call gives a new one, so that a beginning can be shared. All is computed in decimals: a profile gives the same bits everywhere.
/// </remarks>
/// <example><code>
/// var trace = Profile.At("1 kHz").Hold("0.1 s").Signal("gateOpen", true).RampTo("40 mm/s", "1 m/s²").Hold("0.5 s").ToTrace("ramp");
/// </code></example>
public sealed record Profile
{
    private Profile(Quantity rate) => Rate = rate;

    internal Quantity Rate { get; }
    internal Quantity? Start { get; private init; }
    internal ImmutableList<ScenarioStep> Steps { get; private init; } = [];
    internal Motion Motion { get; private init; } = Motion.AtRest;
    internal ProfileUnits Units { get; private init; }
    internal ImmutableList<SignalMark> Signals { get; private init; } = [];
    internal ImmutableList<NoiseMark> Noises { get; private init; } = [];
    internal ImmutableList<DropOutMark> DropOuts { get; private init; } = [];
    internal Unit? PositionUnit { get; private init; }
    internal Unit? VelocityUnit { get; private init; }
    internal Quantity? PositionResolution { get; private init; }
    internal Quantity? VelocityResolution { get; private init; }

    /// <summary>How long the motion is so far, s.</summary>
    public decimal Duration => Motion.Time;
    /// <summary>Where the motion has led so far, m or rad.</summary>
    public decimal Position => Motion.Position;
    /// <summary>How fast the axis is at its end so far, m/s or rad/s.</summary>
    public decimal Velocity => Motion.Velocity;

    /// <summary>Begins a profile that is sampled at a rate: t_k = k / rate, rounded to the nanosecond, so that nothing accumulates.</summary>
    /// <param name="rate">Samples a second, more than 0 and at most 1 GHz, such as <c>1 kHz</c>.</param>
    /// <exception cref="InputException">No rate, or out of range.</exception>
    public static Profile At(Quantity rate)
    {
        var value = default(ProfileUnits).Si(rate, Kind.Rate, Allowed.Positive, "At(rate)", out _);
        if (value > 1_000_000_000) throw Wrong("At(rate)", $"'{rate}' is more than 1 GHz", "time has a resolution of 1 ns");
        return new(rate);
    }

    /// <summary>Begins at another position than 0. Comes before all motion.</summary>
    /// <param name="position">Such as <c>120 mm</c> or <c>-90 deg</c>.</param>
    /// <exception cref="InputException">No position, or the profile has moved already.</exception>
    public Profile From(Quantity position)
    {
        var value = Units.Si(position, Kind.Position, Allowed.Any, "From(position)", out var units);
        if (Motion.Phases.Count > 0) throw Wrong("From(position)", FormattableString.Invariant($"the profile is {Motion.Time:0.#########} s long already"), "say where it begins before anything else");
        return this with { Units = units, Start = position, Motion = Motion.EndingAt(value, 0) };
    }

    /// <summary>Keeps the present speed (at rest: stands still).</summary>
    /// <param name="duration">0 or more.</param>
    /// <exception cref="InputException">No duration, or a negative one.</exception>
    public Profile Hold(Quantity duration)
    {
        var time = Units.Si(duration, Kind.Time, Allowed.NonNegative, "Hold(duration)", out _);
        return With(new HoldStep { For = duration }, Units, Motion.Then(time));
    }

    /// <summary>Changes the speed at constant acceleration: |v - v0| / a long, over (v² - v0²) / 2a where the direction stays.</summary>
    /// <param name="speed">The speed at the end, with its sign.</param>
    /// <param name="acceleration">Its magnitude, more than 0, whether it speeds up or slows down.</param>
    /// <exception cref="InputException">No speed or acceleration, or an acceleration that is not more than 0.</exception>
    public Profile RampTo(Quantity speed, Quantity acceleration)
    {
        var v = Units.Si(speed, Kind.Velocity, Allowed.Any, "RampTo(speed)", out var units);
        var a = units.Si(acceleration, Kind.Acceleration, Allowed.Positive, "RampTo(acceleration)", out units);
        var change = v - Motion.Velocity;
        var ramp = Motion.Then(Math.Abs(change) / a, Math.Sign(change) * a);
        return With(new RampStep { To = speed, Acceleration = acceleration }, units, ramp.EndingAt(ramp.Position, v));
    }

    /// <summary>Moves from rest to rest in the shortest time that the limits allow; ends exactly there. The last sample of a trace need not be
    /// that end: hold afterwards.</summary>
    /// <param name="distance">With its sign.</param>
    /// <param name="speed">The largest speed, more than 0; short moves do not reach it.</param>
    /// <param name="acceleration">The largest acceleration, more than 0.</param>
    /// <param name="jerk">The largest jerk, such as <c>10 m/s³</c>, more than 0; null: no limit.</param>
    /// <exception cref="InputException">A quantity of another kind or out of range, or the axis is not at rest.</exception>
    public Profile MoveBy(Quantity distance, Quantity speed, Quantity acceleration, Quantity? jerk = null)
    {
        var d = Units.Si(distance, Kind.Position, Allowed.Any, "MoveBy(distance)", out var units);
        return Move("MoveBy", d, new() { By = distance, Speed = speed, Acceleration = acceleration, Jerk = jerk }, units);
    }

    /// <summary>Moves from rest to rest at a position in the shortest time that the limits allow, as <see cref="MoveBy"/> does.</summary>
    /// <param name="position">Where to.</param>
    /// <param name="speed">The largest speed, more than 0; short moves do not reach it.</param>
    /// <param name="acceleration">The largest acceleration, more than 0.</param>
    /// <param name="jerk">The largest jerk, more than 0; null: no limit.</param>
    /// <exception cref="InputException">A quantity of another kind or out of range, or the axis is not at rest.</exception>
    public Profile MoveTo(Quantity position, Quantity speed, Quantity acceleration, Quantity? jerk = null)
    {
        var p = Units.Si(position, Kind.Position, Allowed.Any, "MoveTo(position)", out var units);
        return Move("MoveTo", p - Motion.Position, new() { To = position, Speed = speed, Acceleration = acceleration, Jerk = jerk }, units);
    }

    private Profile Move(string call, decimal distance, MoveStep step, ProfileUnits units)
    {
        var v = units.Si(step.Speed, Kind.Velocity, Allowed.Positive, $"{call}(speed)", out units);
        var a = units.Si(step.Acceleration, Kind.Acceleration, Allowed.Positive, $"{call}(acceleration)", out units);
        decimal? j = step.Jerk is null ? null : units.Si(step.Jerk, Kind.Jerk, Allowed.Positive, $"{call}(jerk)", out units);
        if (Motion.Velocity != 0)
            throw Wrong($"{call}({(step.By is null ? "position" : "distance")})", FormattableString.Invariant($"the axis still moves when the move begins, at {Motion.Time:0.#########} s"), "RampTo a speed of 0 first");
        return With(step, units, distance == 0 ? Motion : JerkLimitedMove.Over(Math.Abs(distance), v, a, j).After(Motion, distance, a, j));
    }

    /// <summary>Swings in whole cycles on top of the present speed v0: v = v0 + V·sin(2πft), p = p0 + v0·t + A·(1 - cos(2πft)) with V = 2πf·A. It begins at
    /// one turning point, reaches the other 2A away, and ends with the speed with which it began; the acceleration jumps at both ends.</summary>
    /// <param name="amplitude">A, such as <c>5 mm</c>, or V, such as <c>20 mm/s</c>, with its sign.</param>
    /// <param name="frequency">f, more than 0, such as <c>2 Hz</c>.</param>
    /// <param name="cycles">How many, at least 1.</param>
    /// <exception cref="InputException">A quantity of another kind or out of range, or no cycle.</exception>
    public Profile Sine(Quantity amplitude, Quantity frequency, int cycles = 1)
    {
        var isSpeed = IsSpeed(amplitude);
        var size = Units.Si(amplitude, isSpeed ? Kind.Velocity : Kind.Position, Allowed.Any, "Sine(amplitude)", out var units);
        var f = units.Si(frequency, Kind.Rate, Allowed.Positive, "Sine(frequency)", out _);
        if (cycles < 1) throw Wrong("Sine(cycles)", FormattableString.Invariant($"{cycles} cycles are none"), "give at least 1");
        var time = cycles / f;
        var swing = Motion.Then(time, onTop: new Sine(isSpeed ? size : size * DecimalAngles.Turn * f, f));

        // Whole cycles leave nothing but the way at the speed before.
        return With(new SineStep { Amplitude = amplitude, Frequency = frequency, Cycles = cycles }, units,
            swing.EndingAt(Motion.Position + Motion.Velocity * time, Motion.Velocity));
    }

    /// <summary>Coasts to standstill under friction: |v|' = -|v|/τ - c. It takes T = τ·ln(1 + |v0|/(c·τ)) over |v0|·τ - c·τ·T.</summary>
    /// <param name="deceleration">c, what Coulomb friction alone does, more than 0: Coulomb friction over inertia.</param>
    /// <param name="timeConstant">τ, more than 0: inertia over viscous friction; null: no viscous friction.</param>
    /// <exception cref="InputException">A quantity of another kind or out of range, or friction so small that it would take more than 40 time constants.</exception>
    public Profile Coast(Quantity deceleration, Quantity? timeConstant = null)
    {
        var c = Units.Si(deceleration, Kind.Acceleration, Allowed.Positive, "Coast(deceleration)", out var units);
        decimal? constant = timeConstant is null ? null : units.Si(timeConstant, Kind.Time, Allowed.Positive, "Coast(timeConstant)", out _);
        var (speed, sign) = (Math.Abs(Motion.Velocity), Math.Sign(Motion.Velocity));
        var coast = constant is { } tau ? Decaying(speed, sign, c, tau) : Motion.Then(speed / c, -sign * c);
        return With(new CoastStep { Deceleration = deceleration, TimeConstant = timeConstant }, units, coast.EndingAt(coast.Position, 0));
    }

    private Motion Decaying(decimal speed, int sign, decimal c, decimal tau)
    {
        var ratio = speed / c / tau;
        if (ratio > 2e17m) throw Wrong("Coast(deceleration)", "so little friction takes more than 40 time constants to stop the axis", "give a larger deceleration");
        return Motion.Then(tau * DecimalExponential.Log(1 + ratio), onTop: new Decay(sign * (speed + c * tau), tau));
    }

    /// <summary>From now on a column carries noise: nearly normal, never more than six times its deviation, drawn from seed and sample alone.
    /// Noise of a speed is in the velocity, noise of a position in the position; a deviation of 0 ends it.</summary>
    /// <param name="deviation">Its standard deviation, 0 or more: <c>0.1 mm/s</c> or <c>2 µm</c>.</param>
    /// <param name="seed">Which noise; the same seed gives the same noise.</param>
    /// <exception cref="InputException">Neither speed nor position, or negative.</exception>
    public Profile Noise(Quantity deviation, int seed)
    {
        var ofVelocity = IsSpeed(deviation);
        var value = Units.Si(deviation, ofVelocity ? Kind.Velocity : Kind.Position, Allowed.NonNegative, "Noise(deviation)", out var units);

        // Position and velocity differ in their noise even where the user gives both the same seed.
        var stream = (ulong)(uint)seed << 1 | (ofVelocity ? 1UL : 0);
        return With(new NoiseStep { Deviation = deviation, Seed = seed }, units, Motion) with { Noises = Noises.Add(new(Now, ofVelocity, value, stream)) };
    }

    /// <summary>From now on the cells of position and velocity are missing for a while; the motion itself goes on with what follows.</summary>
    /// <param name="duration">Samples with now &lt;= t &lt; now + duration are missing; 0 or more.</param>
    /// <exception cref="InputException">No duration, or a negative one.</exception>
    public Profile DropOut(Quantity duration)
    {
        Units.Si(duration, Kind.Time, Allowed.NonNegative, "DropOut(duration)", out _);
        return With(new DropOutStep { For = duration }, Units, Motion) with { DropOuts = DropOuts.Add(new(Now, Now + duration.Nanoseconds)) };
    }

    /// <summary>From now on a signal is on or off; before it was first mentioned it is off.</summary>
    /// <param name="name">The name of its column: <c>true</c> or <c>false</c> a sample.</param>
    /// <param name="on">What it becomes.</param>
    /// <exception cref="InputException">The name is empty, <c>position</c> or <c>velocity</c>.</exception>
    public Profile Signal(string name, bool on)
    {
        if (name is null or "" or ProfileSampler.Position or ProfileSampler.Velocity)
            throw Wrong("Signal(name)", $"'{name}' cannot name a signal", "give it a name of its own, such as gateOpen");
        return With(new SignalStep { Name = name, On = on }, Units, Motion) with { Signals = Signals.Add(new(Now, name, on)) };
    }

    /// <summary>What the recording resolves: every value is rounded to the nearest multiple, halves away from 0. Without it 1 nm, 1 nm/s
    /// (1 nrad, 1 nrad/s). Said once for positions, once for speeds.</summary>
    /// <param name="step">More than 0: <c>0.1 µm</c> for positions, <c>0.01 mm/s</c> for speeds.</param>
    /// <exception cref="InputException">Neither speed nor position, or not more than 0.</exception>
    public Profile Resolution(Quantity step)
    {
        var ofVelocity = IsSpeed(step);
        Units.Si(step, ofVelocity ? Kind.Velocity : Kind.Position, Allowed.Positive, "Resolution(step)", out var units);
        return ofVelocity ? this with { Units = units, VelocityResolution = step } : this with { Units = units, PositionResolution = step };
    }

    /// <summary>Writes the columns in other units than SI, so that a grid of 0.1 deg stays one of exact decimals.</summary>
    /// <param name="position">Such as <c>deg</c>.</param>
    /// <param name="velocity">Such as <c>rpm</c>.</param>
    /// <exception cref="InputException">No units of position and speed.</exception>
    public Profile WrittenIn(Unit position, Unit velocity)
    {
        var units = Units.Knowing(position, Kind.Position, $"unit '{position}'", "WrittenIn(position)").Knowing(velocity, Kind.Velocity, $"unit '{velocity}'", "WrittenIn(velocity)");
        return this with { Units = units, PositionUnit = position, VelocityUnit = velocity };
    }

    /// <summary>Samples the motion from 0 to its end (included where a sample falls on it): columns <c>position</c> and <c>velocity</c> that state
    /// their units (SI unless <see cref="WrittenIn"/> says otherwise), and one of <c>true</c> and <c>false</c> for every signal.</summary>
    /// <param name="name">What to call the recording.</param>
    /// <exception cref="InputException">More samples than a recording can hold.</exception>
    public Trace ToTrace(string name) => ProfileSampler.Sample(this, name);

    /// <summary>Begins a profile whose axis is known to be linear or rotary.</summary>
    internal static Profile At(Quantity rate, bool isRotary) => At(rate) with { Units = new(isRotary) };

    private Profile With(ScenarioStep step, ProfileUnits units, Motion motion) => this with { Units = units, Motion = motion, Steps = Steps.Add(step) };

    private long Now => SampleMoments.Round(Motion.Time);

    private static bool IsSpeed(Quantity quantity) => quantity.Unit.Dimension.Time < 0;

    private static InputException Wrong(string place, string what, string fix) => new(new Problem($"profile.{place}", what, fix));
}
