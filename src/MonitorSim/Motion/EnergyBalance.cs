namespace MonitorSim.Motion;

/// <summary>Where the energy of a motion came from and went, J: kinetic at the end - kinetic at the beginning = drive + load - viscous - coulomb - brake - short circuit.</summary>
/// <param name="Kinetic">Kinetic energy at the end minus that at the beginning.</param>
/// <param name="Drive">Work of the drive; negative where it brakes.</param>
/// <param name="Load">Work of the constant load.</param>
/// <param name="Viscous">Lost in viscous friction.</param>
/// <param name="Coulomb">Lost in Coulomb friction.</param>
/// <param name="Brake">Lost in the holding brake.</param>
/// <param name="ShortCircuit">Lost in the short-circuited motor.</param>
public sealed record EnergyBalance(double Kinetic, double Drive, double Load, double Viscous, double Coulomb, double Brake, double ShortCircuit)
{
    // Gauss-Legendre of 5 points (M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, table 25.4).
    private static readonly (double X, double Weight)[] Points =
    [
        (0, 128 / 225.0), (-0.538469310105683, 0.478628670499366), (0.538469310105683, 0.478628670499366),
        (-0.906179845938664, 0.236926885056189), (0.906179845938664, 0.236926885056189),
    ];

    private const int FewestParts = 1, MostParts = 1 << 12;
    private const double Settled = 1e-10;

    /// <summary>What is not accounted for, J: rounding and the error of the integrations.</summary>
    public double Rest => Kinetic - (Drive + Load - Viscous - Coulomb - Brake - ShortCircuit);

    /// <summary>The balance of a motion, by integrating the power of every force along it.</summary>
    public static EnergyBalance Of(Plant plant, Trajectory motion)
    {
        var (sums, energy) = (new double[6], plant.KineticEnergy(motion.At(motion.From).Velocity));
        foreach (var segment in motion.Segments)
        {
            // A motion that settles soon in a long stretch takes finer parts.
            var work = Works(plant, segment, FewestParts);
            for (var parts = 2 * FewestParts; parts <= MostParts; parts *= 2)
            {
                var finer = Works(plant, segment, parts);
                var scale = Math.Max(energy, Math.Max(finer.Max(Math.Abs), sums.Max(Math.Abs)));
                var isSettled = finer.Zip(work).All(pair => Math.Abs(pair.First - pair.Second) <= Settled * scale);
                work = finer;
                if (isSettled) break;
            }

            for (var k = 0; k < sums.Length; k++) sums[k] += work[k];
        }

        var kinetic = plant.KineticEnergy(motion.End.Velocity) - energy;
        return new(kinetic, sums[0], sums[1], sums[2], sums[3], sums[4], sums[5]);
    }

    private static double[] Works(Plant plant, Segment segment, int parts)
    {
        var sums = new double[6];
        var length = (segment.Until - segment.From) / parts;
        for (var part = 0; part < parts; part++)
        {
            foreach (var (x, weight) in Points)
            {
                var state = segment.At(segment.From + (part + (1 + x) / 2) * length);
                Add(sums, plant, state, segment.Actuation, weight * length / 2);
            }
        }

        return sums;
    }

    private static void Add(double[] sums, Plant plant, in MotionState state, in Actuation actuation, double weight)
    {
        var v = state.Velocity;
        sums[0] += weight * state.Torque * v;
        sums[1] += weight * plant.Load * v;
        sums[2] += weight * plant.Viscous * v * v;
        sums[3] += weight * plant.Coulomb * Math.Abs(v);
        if (actuation.IsBraked && plant.Brake is { } brake) sums[4] += weight * brake.Torque * Math.Abs(v);
        if (actuation.IsShorted && plant.ShortCircuit is { } circuit) sums[5] -= weight * circuit.Torque(v) * v;
    }
}
