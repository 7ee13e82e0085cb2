using MonitorSim.Motion.Fit;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Motion.Fit;

public class CoastDownFitTests
{
    // The published check: J = 0.01, b = 0.002, Tc = 0.5, ω0 = 300: it stands after 3.9422868018 s.
    private const double J = 0.01, B = 0.002, Tc = 0.5, Start = 300;

    private static FitResult Fit(double noise, int seed = 0, FitOptions? options = null) =>
        PlantFit.CoastDown(FitTrials.CoastPlan, FitTrials.CoastDown(B / J, Tc / J, Start, noise, seed), options ?? new() { From = "0 s" });

    [Fact]
    public void Without_noise_the_ratios_come_back_and_only_ratios()
    {
        var fit = Fit(0);
        Assert.Equal(B / J, fit.Find("viscous/inertia")!.Value, 1e-9);
        Assert.Equal(Tc / J, fit.Find("coulomb/inertia")!.Value, 1e-7);
        Assert.Null(fit.Plant);
        Assert.Contains("a coast-down tells ratios only: give the inertia to get viscous and coulomb themselves", fit.Warnings);

        // It ends where less than 2 % of the peak speed is left.
        Assert.InRange(fit.Until, 3.8, 3.9422868018);
    }

    [Fact]
    public void With_known_inertia_friction_itself_comes_back()
    {
        var fit = Fit(0, options: new() { From = "0 s", Inertia = "100 kg·cm²" });
        Assert.Equal(B, fit.Find("viscous")!.Value, 1e-10);
        Assert.Equal(Tc, fit.Find("coulomb")!.Value, 1e-8);
        Assert.Equal("100 kg·cm²", fit.Plant!.Inertia!.ToString());
        Assert.Equal("0.5 N·m", fit.Plant.Coulomb!.ToString());
        Assert.Equal("0.002 N·m·s/rad", fit.Plant.Viscous!.ToString());
    }

    /// <summary>As for moves: of 400 trials 380 are expected inside their 95 % intervals, and 363 to 395 accepted.</summary>
    [Fact]
    public void Known_ratios_lie_within_their_intervals_in_95_of_100_trials()
    {
        var (viscous, coulomb) = (0, 0);
        Parallel.For(0, 400, seed =>
        {
            var fit = Fit(2, seed);
            if (Math.Abs(fit.Find("viscous/inertia")!.Value - B / J) <= Half(fit, "viscous/inertia")) Interlocked.Increment(ref viscous);
            if (Math.Abs(fit.Find("coulomb/inertia")!.Value - Tc / J) <= Half(fit, "coulomb/inertia")) Interlocked.Increment(ref coulomb);
        });
        Assert.InRange(viscous, 363, 395);
        Assert.InRange(coulomb, 363, 395);

        static double Half(FitResult fit, string name) => (fit.Find(name)!.Upper - fit.Find(name)!.Lower) / 2;
    }

    [Fact]
    public void Without_viscous_friction_it_says_that_it_cannot_be_told_from_0()
    {
        var fit = PlantFit.CoastDown(FitTrials.CoastPlan, FitTrials.CoastDown(1e-9, 50, 300, 1, 5), new() { From = "0 s" });
        Assert.Equal(50, fit.Find("coulomb/inertia")!.Value, 0.5);
        Assert.Contains("viscous/inertia cannot be told from 0 with this recording", fit.Warnings);
    }

    [Fact]
    public void The_stretch_without_torque_is_found_by_the_plans_stops()
    {
        // The speed is held for a second before mains go off.
        var coast = FitTrials.CoastDown(B / J, Tc / J, Start, 1, 3);
        var values = Enumerable.Repeat(300.0, 1000).Concat(Synthesis.ProfileMotionTests.Values(coast, "w")).ToArray();
        var trace = new Trace("x", [.. Enumerable.Range(0, values.Length).Select(k => k * 1_000_000L)], [new global::MonitorSim.Traces.NumberColumn("w", "rad/s", values)]);
        var plan = PlanReader.Parse("""
            { "signals": { "off": { "windows": [["1 s", "9 s"]] } },
              "axes": { "blade": { "motion": "rotary", "channels": { "velocity": { "column": "w" } }, "stops": { "STO": { "request": "off" } } } } }
            """);
        var fit = PlantFit.CoastDown(plan, trace);
        Assert.Equal(1, fit.From);
        Assert.InRange(Tc / J, fit.Find("coulomb/inertia")!.Lower - 1, fit.Find("coulomb/inertia")!.Upper + 1);
        Assert.Equal("blade: by the plan the torque is never off in this recording; say from where it coasts with \"from\"",
            Assert.Throws<InputException>(() => PlantFit.CoastDown(FitTrials.CoastPlan, trace)).Message);
    }

    [Fact]
    public void The_models_slopes_are_its_derivatives()
    {
        foreach (var viscous in new[] { 0, 1e-4, 3e-3, 0.2, 5 })
        foreach (var t in new[] { 0, 0.3, 2.0 })
        {
            double At(double u, double k, double c) => new CoastDownModel(u, k, c).At(t);
            const double h = 1e-5;
            var slopes = new CoastDownModel(300, viscous, 50).SlopesAt(t);
            Assert.Equal((At(300 + h, viscous, 50) - At(300 - h, viscous, 50)) / (2 * h), slopes.Start, 1e-5);
            Assert.Equal((At(300, viscous + h, 50) - At(300, viscous - h, 50)) / (2 * h), slopes.Viscous, 1e-3);
            Assert.Equal((At(300, viscous, 50 + h) - At(300, viscous, 50 - h)) / (2 * h), slopes.Coulomb, 1e-5);
        }
    }
}
