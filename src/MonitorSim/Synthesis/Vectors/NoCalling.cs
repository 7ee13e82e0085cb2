namespace MonitorSim.Synthesis.Vectors;

/// <summary>What nothing calls for.</summary>
internal sealed class NoCalling(string why) : Calling
{
    public override string? Unreachable => why;

    public override bool CanBeAbsent => false;

    public override void Leave(Script script) => throw new InvalidOperationException(why);

    public override int Call(Script script) => throw new InvalidOperationException(why);
}
