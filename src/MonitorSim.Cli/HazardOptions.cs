using System.CommandLine;
using System.Globalization;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Tuning;

namespace MonitorSim.Cli;

/// <summary>How the user states production's margin and the hazard on the command line of <c>tune</c>.</summary>
internal sealed class HazardOptions
{
    private static readonly Dimension Acceleration = Dimension.Metre / Dimension.Second / Dimension.Second;
    private static readonly Dimension AngularAcceleration = Dimension.Radian / Dimension.Second / Dimension.Second;

    private readonly Option<string?> _need = Of("--need", "critical|largest|normal", "What production needs: what the recordings needed (critical), or the bound for the next run, distribution-free (largest) or normal.");
    private readonly Option<string?> _margin = Of("--margin", "MARGIN", "What production wants on top, such as \"10 %\" or \"5 mm/s\" (limits of that kind only).");
    private readonly Option<string?> _deceleration = Of("--deceleration", "QUANTITY", "Hazard: what the axis stops with in the worst case, such as \"1.5 m/s²\" or \"300 deg/s²\"; concerns the upper limits of SLS and SSR of that kind.");
    private readonly Option<bool> _plant = new("--plant") { Description = "Hazard: the axis stops as its plant in the plan does, from a runaway at full torque unless --fault-acceleration says otherwise; instead of --deceleration." };
    private readonly Option<string?> _fault = Of("--fault-acceleration", "QUANTITY", "Hazard: what the worst fault accelerates with until the drive acts; without it 0, or with --plant a runaway.");
    private readonly Option<string?> _overrun = Of("--overrun", "QUANTITY", "Hazard: how far the axis may move from passing the limit to standstill.");
    private readonly Option<string?> _distance = Of("--distance", "QUANTITY", "Hazard: how far the safeguard is from the danger zone; S = K·T + C (ISO 13855) has to stay within it.");
    private readonly Option<string?> _approach = Of("--approach-speed", "QUANTITY", "Hazard: K, such as \"1600 mm/s\" (29 CFR 1910.217: 63 in/s).");
    private readonly Option<string?> _intrusion = Of("--intrusion", "QUANTITY", "Hazard: C; 0 without it.");
    private readonly Option<string?> _energy = Of("--energy", "QUANTITY", "Hazard: the kinetic energy allowed at the highest speed.");
    private readonly Option<string?> _inertia = Of("--inertia", "QUANTITY", "Hazard: what moves, a mass in kg or a moment of inertia in kg·m².");
    private readonly Option<string?> _for = Of("--for", "AXIS[.MONITOR]", "Hazard: which axis or monitor it concerns; every speed limit of its kind without it.");

    public IEnumerable<Option> All => [_need, _margin, _deceleration, _plant, _fault, _overrun, _distance, _approach, _intrusion, _energy, _inertia, _for];

    /// <summary>Whether anything was said, so that the room is worth showing.</summary>
    public bool IsGiven(ParseResult parsed) => All.Any(option => parsed.GetResult(option) is { Implicit: false });

    /// <summary>What production is taken to need.</summary>
    /// <exception cref="InputException">No such basis, or no margin.</exception>
    public Need Need(ParseResult parsed)
    {
        var need = new Need
        {
            Basis = parsed.GetValue(_need) switch
            {
                null or "critical" => NeedBasis.Critical,
                "largest" => NeedBasis.DistributionFree,
                "normal" => NeedBasis.Normal,
                var other => throw new InputException(new Problem("--need", $"'{other}' is no basis", "write critical, largest or normal")),
            },
        };
        if (parsed.GetValue(_margin)?.Trim() is not { } margin) return need;
        if (margin.EndsWith('%'))
        {
            return double.TryParse(margin[..^1].Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent)
                ? need with { Share = percent / 100 } : throw new InputException(new Problem("--margin", $"'{margin}' is no share", "write \"10 %\" or \"5 mm/s\""));
        }

        if (!Quantity.TryParse(margin, out var amount, out var error)) throw new InputException(new Problem("--margin", error!));
        if (amount!.Number.IsNegative) throw new InputException(new Problem("--margin", $"'{margin}' is negative", "write 0 or more"));
        return need with { Amount = (double)amount.ExactDifference, Unit = SiUnit(amount.Unit.Dimension) };
    }

    /// <summary>What the hazard allows; empty where none was stated.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="plan">The plan; null where parts are joined.</param>
    /// <exception cref="InputException">Quantities of the wrong kind, or some missing: all of it.</exception>
    public IReadOnlyList<Hazard> Hazards(ParseResult parsed, Plan? plan)
    {
        if (!All.Skip(2).Any(option => parsed.GetResult(option) is { Implicit: false })) return [];
        var problems = new List<Problem>();
        var isByPlant = parsed.GetValue(_plant);
        var isRotary = isByPlant ? IsRotary(plan, parsed.GetValue(_for)) : parsed.GetValue(_deceleration) is { } text && Quantity.TryParse(text, out var written, out _) && written!.Unit.Dimension == AngularAcceleration;
        double? Read(Option<string?> option, string noun, string example, Dimension dimension) => Si(parsed.GetValue(option), option.Name, noun, example, dimension, problems);
        var (acceleration, example) = isRotary ? (AngularAcceleration, "300 deg/s²") : (Acceleration, "1.5 m/s²");
        var hazard = new Hazard
        {
            Unit = isRotary ? "rad/s" : "m/s",
            Stopping = new ConstantDeceleration(Read(_deceleration, "deceleration", example, acceleration) ?? 1),
            FaultAcceleration = Read(_fault, isRotary ? "rotary acceleration" : "linear acceleration", example, acceleration) ?? 0,
            Overrun = isRotary ? Read(_overrun, "angle", "5 deg", Dimension.Radian) : Read(_overrun, "length", "10 mm", Dimension.Metre),
            Distance = Read(_distance, "length", "300 mm", Dimension.Metre),
            ApproachSpeed = Read(_approach, "speed", "1600 mm/s", Dimension.Metre / Dimension.Second) ?? 0,
            Intrusion = Read(_intrusion, "length", "0 mm", Dimension.Metre) ?? 0,
            Energy = Read(_energy, "energy", "10 J", Dimension.NewtonMetre),
            Inertia = isRotary ? Read(_inertia, "moment of inertia", "2 kg·m²", Dimension.Kilogram * Dimension.Metre * Dimension.Metre) : Read(_inertia, "mass", "180 kg", Dimension.Kilogram),
            For = parsed.GetValue(_for),
        };
        void Needs(bool isThere, string option, string why)
        {
            if (!isThere) problems.Add(new(option, why, $"give {option}"));
        }

        Needs(isByPlant || parsed.GetValue(_deceleration) is not null, "--deceleration", "without it nobody can say how the axis stops");
        if (isByPlant && parsed.GetValue(_deceleration) is not null) problems.Add(new("--plant", "--deceleration says already how the axis stops", "give one of them"));
        if (isByPlant && plan is null) problems.Add(new("--plant", "parts do not say what moves", "give the plan and the recordings, or --deceleration"));
        Needs(hazard.Distance is null || hazard.ApproachSpeed > 0, "--approach-speed", "a distance takes K of S = K·T + C");
        Needs(isByPlant || hazard.Energy is null || hazard.Inertia is not null, "--inertia", "an energy takes what moves");
        if (problems.Count > 0) throw new InputException(problems);
        if (!isByPlant) return [hazard];
        return PlantHazards.Of(plan!, hazard) is { Count: > 0 } found ? found
            : throw new InputException(new Problem("--plant", "no axis with a plant has a speed limit that stops it", "describe what moves: \"plant\": { \"mass\": \"180 kg\", … }; --for names an axis or axis.monitor of the plan"));
    }

    // Of axes of both kinds the first decides; --for names another.
    private static bool IsRotary(Plan? plan, string? of) =>
        plan?.Axes.FirstOrDefault(axis => axis.Value.Plant is not null && (of is null || of == axis.Key || of.StartsWith(axis.Key + ".", StringComparison.Ordinal))).Value?.Motion == AxisMotion.Rotary;

    /// <summary>A hazard that concerns nothing is a slip, not an answer.</summary>
    /// <exception cref="InputException">No limit is concerned.</exception>
    public static void RequireConcern(IReadOnlyList<Hazard> hazards, TuneResult result)
    {
        if (hazards is not [var hazard, ..] || hazards.Any(hazard => result.Monitors.Any(hazard.Concerns))) return;
        throw new InputException(new Problem(hazard.For is null ? "--deceleration" : "--for",
            $"no limit is concerned: there is no upper limit of SLS or SSR in {hazard.Unit} whose trip stops the axis{(hazard.For is { } of ? $" at '{of}'" : "")}",
            "give a deceleration of the axis's kind, and --for an axis or axis.monitor of the plan"));
    }

    private static double? Si(string? text, string option, string noun, string example, Dimension dimension, List<Problem> problems)
    {
        if (text is null) return null;
        if (!Quantity.TryParse(text, out var quantity, out var error)) problems.Add(new(option, error!));
        else if (quantity!.Unit.Dimension != dimension) problems.Add(new(option, $"'{text}' is no {noun}", $"write one such as \"{example}\""));
        else if (quantity.Number.IsNegative || (option == "--deceleration" && quantity.Number.IsZero)) problems.Add(new(option, $"'{text}' is too small", $"write more, such as \"{example}\""));
        else return quantity.Si;
        return null;
    }

    // The SI units in which tuned limits are given.
    private static string? SiUnit(Dimension dimension) =>
        new[] { "m", "m/s", "m/s²", "N", "rad", "rad/s", "rad/s²", "N·m", "°C" }.FirstOrDefault(unit => Unit.Parse(unit).Dimension == dimension);

    private static Option<string?> Of(string name, string help, string description) => new(name) { Description = description, HelpName = help };
}
