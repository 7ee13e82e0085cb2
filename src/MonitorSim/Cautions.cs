namespace MonitorSim;

/// <summary>What has to stand beside every result that people see.</summary>
public static class Cautions
{
    /// <summary>One by one.</summary>
    public static IReadOnlyList<string> Sentences { get; } =
    [
        "MonitorSim is an offline engineering aid.",
        "It is not a safety component, certifies nothing and replaces neither the risk assessment (ISO 12100), nor design and validation by competent persons (ISO 13849-1/-2, IEC 62061), nor tests on the real machine.",
        "Local law and codes and the machine's own documents take precedence.",
        "Never defeat a safeguard to record a trace.",
    ];

    /// <summary>All of them in one line.</summary>
    public static string Text { get; } = string.Join(' ', Sentences);
}
