namespace MonitorSim.Synthesis.Steps;

/// <summary>One thing after another that an axis does, or that begins at that moment: one call of <see cref="Profile"/>'s, written down.</summary>
public abstract record ScenarioStep
{
    /// <summary>The word that JSON has for it.</summary>
    public abstract string Step { get; }

    /// <summary>Goes on with a profile.</summary>
    internal abstract Profile AppendTo(Profile profile);
}
