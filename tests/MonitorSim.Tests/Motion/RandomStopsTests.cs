using MonitorSim.Motion;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Motion;

/// <summary>Stops of random machines: energy is conserved, who stands stays, and a plain integration in small steps comes to the same.</summary>
public sealed class RandomStopsTests
{
    private const int Machines = 400;

    [Fact]
    public void EnergyIsConservedAndStandingIsTrue()
    {
        var stood = 0;
        for (var seed = 0; seed < Machines; seed++)
        {
            var random = new Random(seed);
            var (plant, program) = (APlant(random), AProgram(random));
            var result = Stop.Simulate(plant, program, 2 * random.NextDouble() - 1, Faults(random), horizon: 5);
            StopTests.Balanced(plant, result);
            if (result.Time is not { } time) continue;
            stood++;

            // No creeping, no chatter: from then on it is where it is, whatever moment is asked for.
            var place = result.Motion.At(time).Position;
            foreach (var share in new[] { 0.1, 0.5, 1 })
            {
                var later = result.Motion.At(time + share * (result.Motion.Until - time));
                Assert.True(Math.Abs(later.Velocity) <= 1e-6 * result.PeakSpeed && Math.Abs(later.Position - place) <= 1e-6 * (1 + result.Distance), $"seed {seed}: {later}");
            }
        }

        Assert.InRange(stood, Machines / 3, Machines);
    }

    /// <summary>Torque off at once, the brake later: the literal model takes steps of 20 µs and lets dry friction hold what it can.</summary>
    [Fact]
    public void APlainIntegrationComesToTheSame()
    {
        const double Step = 2e-5;
        for (var seed = 0; seed < 60; seed++)
        {
            var random = new Random(seed);
            var plant = APlant(random);
            var start = 2 * random.NextDouble() - 1;
            var result = Stop.Simulate(plant, new() { Reaction = Reaction.Stop0 }, start, horizon: 1);
            var (position, velocity) = (0.0, start);
            for (var k = 0; k * Step < Math.Min(1, result.Motion.Until); k++)
            {
                var dry = plant.Coulomb + (plant.Brake is { } brake && k * Step >= brake.Apply ? brake.Torque : 0);
                var smooth = plant.Load - plant.Viscous * velocity + (plant.ShortCircuit?.Torque(velocity) ?? 0);
                // Against the motion as long as there is one; dry friction only takes it away, it does not turn it round.
                var without = velocity + Step * smooth / plant.Inertia;
                var taken = Math.Min(Math.Abs(without), Step * dry / plant.Inertia);
                var next = without - Math.Sign(without) * taken;
                position += (velocity + next) / 2 * Step;
                velocity = next;
            }

            Assert.True(Math.Abs(result.Motion.End.Position - position) < 2e-3 * (0.05 + result.Distance), $"seed {seed}: {result.Motion.End.Position} and {position}; {plant}");
        }
    }

    private static Plant APlant(Random random) => new()
    {
        Inertia = 0.5 + random.NextDouble(),
        Coulomb = random.Next(3) == 0 ? 0 : 2 * random.NextDouble(),
        Viscous = random.Next(3) == 0 ? 0 : random.NextDouble(),
        Load = random.Next(2) == 0 ? 0 : 6 * random.NextDouble() - 3,
        Limit = 4 + 4 * random.NextDouble(),
        Brake = random.Next(3) == 0 ? null : new(4 + 2 * random.NextDouble(), 0.2 * random.NextDouble()),
        ShortCircuit = random.Next(3) switch { 0 => new MagnetBraking(0.5, 2e-3, 0.04, 4, 300), 1 => new TableBraking([(0.05, 2), (0.3, 1), (1, 0.5)]), _ => null },
    };

    private static StopProgram AProgram(Random random) => new()
    {
        Reaction = (Reaction)random.Next(1, 4),
        ReactionDelay = 0.02 * random.NextDouble(),
        Response = 0.004,
        Variant = (StopVariant)random.Next(3),
        Deceleration = 0.5 + 4 * random.NextDouble(),
        Time = 0.1 + random.NextDouble(),
        Delay = 0.05 * random.NextDouble(),
        Tolerance = random.Next(2) == 0 ? null : 0.1 * random.NextDouble(),
        TimeLimit = random.Next(2) == 0 ? null : 0.5,
        CommandsBrake = random.Next(2) == 0,
        BrakeWait = 0.1,
    };

    private static MachineFault[] Faults(Random random) => random.Next(5) switch
    {
        0 => [new RunawayFault()],
        1 => [new IgnoredRampFault(), new RunawayFault()],
        2 => [new OpenBrakeFault()],
        3 => [new TorqueLossFault()],
        _ => [],
    };
}
