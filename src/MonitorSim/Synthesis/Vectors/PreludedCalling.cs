namespace MonitorSim.Synthesis.Vectors;

/// <summary>By a setting of the signals, after a trip, an output or a state that the request reads has been brought about.</summary>
/// <param name="prelude">What brings it about.</param>
/// <param name="asking">The settings that ask for it and do not, from then on.</param>
internal sealed class PreludedCalling(Calling prelude, Asking asking) : Calling
{
    public override bool CanBeAbsent => true;

    public override bool CanBeLost => asking.No is not null;

    public override void Leave(Script script)
    {
        // Without such a setting it is not asked for before the prelude only.
        if (asking.No is not { } no) return;
        Establish(script);
        script.Ask(no);
    }

    public override int Call(Script script)
    {
        Establish(script);
        script.Ask(asking.Yes!);
        return script.Count;
    }

    private void Establish(Script script)
    {
        if (script.Assumption is not null) return;
        script.Assumption = asking.Assumption;
        var established = prelude.Call(script);

        // Conditions read the value of the cycle before.
        script.Run(established + 1 - script.Count);
        if (prelude is TripCalling or OutputCalling) prelude.Leave(script);
    }
}
