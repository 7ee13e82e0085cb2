using MonitorSim.Monitors;

namespace MonitorSim.Plans;

/// <summary>The functions that a plan can name. A new function's record goes into this list, in alphabetical order; nothing else.</summary>
internal static class MonitorTypes
{
    public static readonly IReadOnlyList<Type> All =
    [
        typeof(Sar), typeof(Sca), typeof(Sdi), typeof(Sla), typeof(Sli), typeof(Slp), typeof(Sls),
        typeof(Slt), typeof(Smt), typeof(Sos), typeof(Ssm), typeof(Ssr), typeof(Str),
    ];

    /// <summary>The abbreviations, in alphabetical order.</summary>
    public static IReadOnlyCollection<string> Functions => Variants.Of(typeof(MonitorPlan))!.Words;
}
