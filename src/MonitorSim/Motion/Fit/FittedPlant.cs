using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Fit;

/// <summary>Fitted parameters as the plant of a plan; what the axis's plant says beyond them stays.</summary>
internal static class FittedPlant
{
    public static PlantPlan? Of(FitData data, IReadOnlyList<FittedParameter> parameters, Quantity? known, List<string> warnings)
    {
        var inertia = Positive(data.InertiaName) ?? known;
        if (inertia is null) return null;
        var plant = data.Plan.Plant ?? new();
        return plant with
        {
            Mass = data.IsRotary ? null : inertia,
            Inertia = data.IsRotary ? inertia : null,
            Coulomb = Positive("coulomb"),
            Viscous = Positive("viscous"),
            Load = Find("load") is { } load ? Written(load) : plant.Load,
        };

        FittedParameter? Find(string name) => parameters.FirstOrDefault(parameter => parameter.Name == name);

        Quantity? Positive(string name)
        {
            if (Find(name) is not { } found) return null;
            if (found.Value > 0) return Written(found);
            warnings.Add($"{name} is left out of the plant, for it came out below 0");
            return null;
        }
    }

    private static Quantity Written(FittedParameter parameter) => Quantity.Parse(parameter.Text);
}
