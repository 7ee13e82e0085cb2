using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>How the measure of one side is put at its limit, past it, or well within.</summary>
internal abstract class Lever
{
    /// <summary>The limit side.</summary>
    public abstract string Side { get; }

    /// <summary>The level, or null.</summary>
    public int? Level { get; init; }

    /// <summary>The axis that it moves.</summary>
    public abstract string Axis { get; }

    /// <summary>The recorded quantity that it moves; null where it moves a second recording only.</summary>
    public virtual Kind? Moves => null;

    /// <summary>Whether it measures from a reference that is latched as watching begins.</summary>
    public virtual bool HasReference => false;

    /// <summary>Cycles from the first watching one until this side is compared.</summary>
    public virtual int LeadIn => 0;

    /// <summary>For how many cycles this side is compared.</summary>
    public virtual int Room => int.MaxValue;

    /// <summary>The first cycle at which there is something to measure.</summary>
    public virtual int Order => 0;

    /// <summary>Cycles of rest until nothing earlier counts in the measure.</summary>
    public virtual int Memory => 0;

    /// <summary>Why the limit cannot be passed; null where it can.</summary>
    public virtual string? Unreachable => null;

    /// <summary>Whether the measure is past its limit at a cycle that has been written; false where that is not known.</summary>
    /// <param name="script">The vector.</param>
    /// <param name="cycle">The cycle.</param>
    /// <param name="reference">The first watching cycle.</param>
    public virtual bool IsPast(Script script, int cycle, int reference) => false;

    /// <summary>Prepares the start of a vector of about so many cycles.</summary>
    public virtual void Prepare(Script script, int cycles) { }

    /// <summary>Why it cannot be past its limit up to the last cycle of arming and within it at the next; null where it can.</summary>
    public virtual string? HeardWhileArming => null;

    /// <summary>Lets as many cycles pass as it takes until the limit can be passed at the next one without anything else happening.</summary>
    public virtual void Approach(Script script) { }

    /// <summary>Puts the measure well within its limit.</summary>
    public abstract void Rest(Script script);

    /// <summary>Puts the measure exactly at its limit, or at the last step before it.</summary>
    public abstract void Allow(Script script);

    /// <summary>Puts the measure at the first step past its limit.</summary>
    public abstract void Exceed(Script script);

    /// <summary>Past the limit while arming, so many cycles before the first watching one, where nothing else may trip either.</summary>
    public virtual void ExceedUnheard(Script script, int cyclesLeft) => Exceed(script);

    /// <summary>Takes the present value for the reference that is latched next.</summary>
    public virtual void Anchor(Script script) { }
}
