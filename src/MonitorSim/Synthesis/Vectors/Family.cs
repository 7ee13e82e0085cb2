namespace MonitorSim.Synthesis.Vectors;

/// <summary>What a family of branches has to offer: vectors, and branches that no vector can meet.</summary>
internal sealed class Harvest
{
    public List<Draft> Drafts { get; } = [];

    public List<MissedBranch> Missed { get; } = [];

    public void Miss(string why, params IEnumerable<Branch> branches) => Missed.AddRange(branches.Select(branch => new MissedBranch(branch, why)));

    /// <summary>Makes a vector; where it cannot be made, its branches are missed and the reason is said.</summary>
    /// <param name="branches">What it is to meet.</param>
    /// <param name="make">Makes it; null where it would show nothing.</param>
    public void Try(IReadOnlyList<Branch> branches, Func<Draft?> make)
    {
        if (branches.Count == 0) return;
        try
        {
            if (make() is { } draft) Drafts.Add(draft.Meet(branches));
        }
        catch (VectorException cannot)
        {
            Miss(cannot.Message, branches);
        }
    }
}
