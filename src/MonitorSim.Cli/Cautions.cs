namespace MonitorSim.Cli;

/// <summary>What has to stand beside every result.</summary>
internal static class Cautions
{
    public const string Short = "An offline engineering aid: it is no safety component, certifies nothing, and replaces neither risk assessment nor validation nor tests "
        + "on the real machine. Local law and codes and the machine's own documents come first. Never defeat a safeguard to record a trace.";
}
