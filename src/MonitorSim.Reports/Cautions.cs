namespace MonitorSim.Reports;

/// <summary>What has to stand beside every result.</summary>
internal static class Cautions
{
    public const string Short = "MonitorSim is an offline engineering aid. It is not a safety component and certifies nothing.";

    public static readonly IReadOnlyList<string> All =
    [
        Short,
        "It replaces neither the risk assessment (ISO 12100), nor design and validation by competent persons (ISO 13849-1/-2, IEC 62061), nor tests on the real machine.",
        "Local law and codes and the machine's own documents take precedence.",
        "Never defeat a safeguard to record a trace.",
    ];
}
