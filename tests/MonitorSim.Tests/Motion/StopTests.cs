using MonitorSim.Motion;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Motion;

/// <summary>Stops against their closed forms.</summary>
public sealed class StopTests
{
    private static readonly StopProgram Off = new() { Reaction = Reaction.Stop0 };

    // p = 4, R = 0.5 Ω, ψ = 0.08 V·s, L = 2 mH.
    private static readonly MagnetBraking Magnet = new(0.5, 2e-3, 0.08, 4);

    /// <summary>t = (J/b) ln(1 + b ω0/Tc), θ = J ω0/b - (J Tc/b²) ln(1 + b ω0/Tc) (linear equation of first order).</summary>
    [Fact]
    public void ViscousAndCoulombFriction()
    {
        var result = Stop.Simulate(new() { Inertia = 0.01, Viscous = 0.002, Coulomb = 0.5 }, Off, 300);
        Close(3.9422868018, result.Time!.Value);
        Close(514.4282995, result.Distance);
        Assert.Equal(0, result.Motion.End.Velocity);
        Balanced(new() { Inertia = 0.01, Viscous = 0.002, Coulomb = 0.5 }, result);
    }

    /// <summary>Constant deceleration: 900 rpm at 5 rpm/s takes 180 s and 1350 rev.</summary>
    [Fact]
    public void CoulombFrictionAlone()
    {
        const double Rpm = Math.PI / 30;
        var result = Stop.Simulate(new() { Inertia = 2, Coulomb = 2 * 5 * Rpm }, Off, 900 * Rpm);
        Close(180, result.Time!.Value);
        Close(1350 * 2 * Math.PI, result.Distance);
    }

    /// <summary>v²/2a: 0.25 m/s at 1 m/s² is 31.25 mm.</summary>
    [Fact]
    public void ARampWithinTheLimit()
    {
        var program = new StopProgram { Reaction = Reaction.Stop1, Variant = StopVariant.Ramp, Deceleration = 1, Tolerance = 0 };
        var result = Stop.Simulate(new() { Inertia = 180, Coulomb = 90, Viscous = 40, Limit = 2400 }, program, -0.25);
        Close(0.03125, result.Distance);
        Close(0.25, result.Time!.Value);
        Assert.Null(result.DetectedBy);
    }

    /// <summary>T = -1.5 p ψ² ωe R/(R² + ωe² L²); its peak of 0.75 p ψ²/L lies at ωe = R/L.</summary>
    [Theory]
    [InlineData(50, -3.692307692)]
    [InlineData(250, -9.6)]
    [InlineData(1000, -4.517647059)]
    public void ShortCircuitTorque(double electrical, double torque)
    {
        Close(torque, Magnet.Torque(electrical / 4));
        Close(-torque, Magnet.Torque(-electrical / 4));
        Close(0.75 * 4 * 0.08 * 0.08 / 2e-3, 9.6);
    }

    /// <summary>Derived, by separating the variables: t = (J/c)·(R² ln(ω0/ω1) + p²L²(ω0² - ω1²)/2), θ = (J/c)·(R²(ω0 - ω1) + p²L²(ω0³ - ω1³)/3), c = 1.5 p² ψ² R.</summary>
    [Fact]
    public void ShortCircuitAlone()
    {
        var plant = new Plant { Inertia = 0.01, ShortCircuit = Magnet };
        var result = Stop.Simulate(plant, Off with { Standstill = 1 }, 314.159);
        Close(0.598399854, result.Time!.Value);
        Close(96.3223032, result.Distance);
        Balanced(plant, result);
    }

    /// <summary>Without a standstill and without dry friction the motion never quite ends: a millionth of its speed counts as rest. By the closed form above, with ω1 = ω0/10⁶ (derived).</summary>
    [Fact]
    public void ShortCircuitAloneNeverQuiteStops()
    {
        var result = Stop.Simulate(new() { Inertia = 0.01, ShortCircuit = Magnet }, Off, 314.159);
        var (c, start, end) = (1.5 * 16 * 0.08 * 0.08 * 0.5, 314.159, 314.159e-6);
        Close(0.01 / c * (0.25 * Math.Log(1e6) + 16 * 4e-6 * (start * start - end * end) / 2), result.Time!.Value);
    }

    /// <summary>Under a load that a short circuit does not hold, the axis sinks at the speed at which both are equal, for ever (derived: 1.5 p² ψ² R ω/(R² + p² ω² L²) = 1 N·m).</summary>
    [Fact]
    public void ALoadSinksAtASteadySpeed()
    {
        var result = Stop.Simulate(new() { Inertia = 0.01, Load = -1, ShortCircuit = Magnet }, Off, 0, horizon: 100);
        var (torque, resistance, reactance) = (1.5 * 16 * 0.08 * 0.08 * 0.5, 0.25, 16 * 4e-6);
        Assert.Null(result.Time);
        Close(-(torque - Math.Sqrt(torque * torque - 4 * resistance * reactance)) / (2 * reactance), result.Motion.End.Velocity);
        Assert.InRange(result.Motion.Segments.Count, 1, 10_000);
    }

    /// <summary>The same curve as a fine table gives nearly the same stop, in closed form from point to point.</summary>
    [Fact]
    public void ShortCircuitByTable()
    {
        var table = new TableBraking([.. Enumerable.Range(1, 640).Select(k => (k * 0.5, -Magnet.Torque(k * 0.5)))]);
        var plant = new Plant { Inertia = 0.01, ShortCircuit = table };
        var result = Stop.Simulate(plant, Off with { Standstill = 1 }, 314.159);
        Assert.Equal(0.598399854, result.Time!.Value, 1e-4);
        Assert.Equal(96.3223032, result.Distance, 1e-2);
        Balanced(plant, result);
    }

    /// <summary>The two ways of solving agree: friction in closed form, and beside a magnet without flux as integration.</summary>
    [Fact]
    public void IntegrationAgreesWithTheClosedForm()
    {
        var plant = new Plant { Inertia = 0.01, Viscous = 0.002, Coulomb = 0.5, ShortCircuit = Magnet with { Flux = 1e-12 } };
        var result = Stop.Simulate(plant, Off, 300);
        Close(3.9422868018, result.Time!.Value);
        Close(514.4282995, result.Distance);
    }

    /// <summary>A lift of 100 kg without torque falls v = g t, s = g t²/2 until the brake closes after 60 ms, then stops at (B - m g)/m (derived).</summary>
    [Fact]
    public void ALiftDropsUntilItsBrakeCloses()
    {
        const double G = 9.81, Apply = 0.06;
        var plant = new Plant { Inertia = 100, Load = -100 * G, Brake = new(2000, Apply) };
        var result = Stop.Simulate(plant, Off, 0);
        var (speed, deceleration) = (G * Apply, 2000 / 100.0 - G);
        Close(G * Apply * Apply / 2 + speed * speed / (2 * deceleration), result.Drop!.Value);
        Close(Apply + speed / deceleration, result.Time!.Value);
        Close(speed, result.PeakSpeed);
        Close(50 * speed * speed, result.Energy);
        Balanced(plant, result);
    }

    [Fact]
    public void ABrakeThatStaysOpenNeverStopsALift()
    {
        var plant = new Plant { Inertia = 100, Load = -981, Brake = new(2000, 0.06) };
        var result = Stop.Simulate(plant, Off, 0, [new OpenBrakeFault()], horizon: 2);
        Assert.Null(result.Time);
        Close(9.81 * 2, result.PeakSpeed);
    }

    /// <summary>Dry friction holds what does not exceed it, exactly: no creeping, no chatter.</summary>
    [Theory]
    [InlineData(89.999, true)]
    [InlineData(90, true)]
    [InlineData(90.001, false)]
    public void Stiction(double load, bool holds)
    {
        var result = Stop.Simulate(new() { Inertia = 180, Coulomb = 90, Load = load }, Off, -0.1, horizon: 1000);
        Assert.Equal(holds, result.Time is not null);
        if (!holds) return;
        Assert.Equal(0, result.Motion.End.Velocity);
        Assert.InRange(result.Motion.Segments.Count, 1, 5);
    }

    /// <summary>Upwards without torque: it stops, turns, and falls; both halves in closed form (derived).</summary>
    [Fact]
    public void ALiftThatMovesUpTurnsFirst()
    {
        var plant = new Plant { Inertia = 100, Coulomb = 100, Load = -981, Brake = new(3000, 0.2) };
        var result = Stop.Simulate(plant, Off, 1);
        var (up, down) = (10.81, 8.81);
        var top = 1 / (2 * up);
        var (fallTime, speed) = (0.2 - 1 / up, 0.0);
        speed = down * fallTime;
        var stopping = (3000 + 100 - 981) / 100.0;
        var end = top - down * fallTime * fallTime / 2 - speed * speed / (2 * stopping);
        Close(end, result.Motion.End.Position);
        Close(0.2 + speed / stopping, result.Time!.Value);
        Balanced(plant, result);
    }

    /// <summary>A ramp that asks for more than the drive has: it falls behind, and what stops it is limit and friction (derived: (F + C)/m without viscous friction).</summary>
    [Fact]
    public void ADriveAtItsLimitFallsBehindItsRamp()
    {
        var plant = new Plant { Inertia = 100, Coulomb = 50, Limit = 150 };
        var result = Stop.Simulate(plant, new() { Reaction = Reaction.Stop1, Variant = StopVariant.Ramp, Deceleration = 4 }, 1);
        Close(0.5, result.Time!.Value);
        Close(0.25, result.Distance);
        Balanced(plant, result);
    }

    /// <summary>With viscous friction the drive can follow at first and falls behind below the speed at which friction no longer helps enough.</summary>
    [Fact]
    public void ADriveFallsBehindWhereFrictionHelpsLess()
    {
        var plant = new Plant { Inertia = 100, Viscous = 100, Limit = 250 };
        var result = Stop.Simulate(plant, new() { Reaction = Reaction.Stop1, Variant = StopVariant.Ramp, Deceleration = 3 }, 1);
        // Follows 3 m/s² while 300 - 100 v <= 250, down to 0.5 m/s after 1/6 s; then m dv/dt = -250 - 100 v.
        Close(1 / 6.0 + Math.Log(1 + 100 * 0.5 / 250), result.Time!.Value);
        Balanced(plant, result);
    }

    [Fact]
    public void AViolatedRampLeadsToTorqueOff()
    {
        var plant = new Plant { Inertia = 100, Coulomb = 50, Limit = 150 };
        var result = Stop.Simulate(plant, new() { Reaction = Reaction.Stop1, Variant = StopVariant.Ramp, Deceleration = 4, Tolerance = 0.2, ReactionDelay = 0.01, Response = 0.004 }, 1);
        // The demand acts after 10 ms; the speed leaves the ramp by 0.2 m/s where (t - 0.01)·2 + 0.2 = 4·t.
        Close(0.09, result.DetectedAt!.Value - 0.004);
        Assert.Equal(("SS1", "ramp"), result.DetectedBy);
        Close(result.DetectedAt.Value + 0.01, result.OffAt!.Value);
    }

    /// <summary>A stop by time uses its time up.</summary>
    [Fact]
    public void AStopByTimeStandsAtItsEnd()
    {
        var program = new StopProgram { Reaction = Reaction.Stop1, Variant = StopVariant.Time, Time = 0.6, ReactionDelay = 0.1 };
        var result = Stop.Simulate(new() { Inertia = 10, Limit = 1000 }, program, 0.5);
        Close(0.6, result.Time!.Value);
        Close(0.5 * 0.1 + 0.5 * 0.5 / 2, result.Distance);
        Close(0.7, result.OffAt!.Value);
    }

    /// <summary>A drive that ignores its ramp is caught by time alone, and a runaway goes on until torque off.</summary>
    [Fact]
    public void ARunawayThatIgnoresTheRampEndsWithTorqueOff()
    {
        var plant = new Plant { Inertia = 10, Limit = 20, Coulomb = 10 };
        var result = Stop.Simulate(plant, new() { Reaction = Reaction.Stop1, Time = 0.5 }, 0.5, [new RunawayFault(), new IgnoredRampFault()]);
        Close(1.0, result.PeakSpeed);
        Close(0.5, result.OffAt!.Value);
        Close(1.5, result.Time!.Value);
        Balanced(plant, result);
    }

    [Fact]
    public void ARunawayNeedsALimit() =>
        Assert.Contains("limit", Assert.Throws<InputException>(() => Stop.Simulate(new() { Inertia = 1 }, Off, 1, [new RunawayFault()])).Message);

    internal static void Close(double expected, double found) => Assert.InRange(found, expected - Math.Abs(expected) * 1e-6 / 10, expected + Math.Abs(expected) * 1e-6 / 10);

    internal static void Balanced(Plant plant, StopResult result)
    {
        var balance = EnergyBalance.Of(plant, result.Motion);
        var turnover = plant.KineticEnergy(result.PeakSpeed) + Math.Abs(balance.Load) + Math.Abs(balance.Drive);
        Assert.InRange(balance.Rest / turnover, -1e-6, 1e-6);
    }
}
