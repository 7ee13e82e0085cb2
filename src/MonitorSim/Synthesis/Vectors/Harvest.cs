namespace MonitorSim.Synthesis.Vectors;

/// <summary>Branches that one vector is to meet, and the ways to make it, the best first. The first that comes out as meant is kept.</summary>
/// <param name="Branches">What is to be met.</param>
/// <param name="Ways">Each makes a vector, which may meet fewer of the branches than wanted; a <see cref="VectorException"/> says why it cannot be made.</param>
internal sealed record Attempt(IReadOnlyList<Branch> Branches, IReadOnlyList<Func<Draft>> Ways);

/// <summary>What all families of branches have to offer: attempts, and branches that no vector can meet.</summary>
internal sealed class Harvest
{
    /// <summary>Of each attempt so many ways are tried.</summary>
    private const int MostWays = 8;

    public List<Attempt> Attempts { get; } = [];

    public List<MissedBranch> Missed { get; } = [];

    public void Miss(string why, params IEnumerable<Branch> branches) => Missed.AddRange(branches.Select(branch => new MissedBranch(branch, why)));

    /// <summary>Has a vector made.</summary>
    /// <param name="branches">What it is to meet.</param>
    /// <param name="ways">How it may be made, the best way first.</param>
    public void Try(IEnumerable<Branch> branches, params IEnumerable<Func<Draft>> ways)
    {
        if (branches.ToList() is { Count: > 0 } wanted) Attempts.Add(new(wanted, [.. ways.Take(MostWays)]));
    }
}
