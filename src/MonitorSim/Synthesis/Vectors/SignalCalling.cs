namespace MonitorSim.Synthesis.Vectors;

/// <summary>By a setting of the signals.</summary>
internal sealed class SignalCalling(Asking asking, bool canBeLost = true) : Calling
{
    public override string? Unreachable => asking.Yes is null ? asking.Why : null;

    public override bool CanBeAbsent => asking.No is not null;

    public override bool CanBeLost => canBeLost && CanBeAbsent;

    public Setting Yes => asking.Yes!;

    public override void Leave(Script script)
    {
        script.Assumption ??= asking.Assumption;
        script.Ask(asking.No!);
    }

    public override int Call(Script script)
    {
        script.Assumption ??= asking.Assumption;
        script.Ask(asking.Yes!);
        return script.Count;
    }
}
