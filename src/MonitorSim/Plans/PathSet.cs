namespace MonitorSim.Plans;

/// <summary>Paths of a plan, and whether another touches any of them: a file may have very many.</summary>
internal sealed class PathSet
{
    private readonly HashSet<string> _paths = new(StringComparer.Ordinal);
    private readonly HashSet<string> _around = new(StringComparer.Ordinal);

    /// <param name="paths">The paths.</param>
    public PathSet(IEnumerable<PlanPath> paths)
    {
        foreach (var path in paths)
        {
            _paths.Add(path.Text);
            for (var at = path; at is not null && _around.Add(at.Text); at = at.Parent) { }
        }
    }

    /// <summary>Whether a path is one of these, contains one, or is contained in one.</summary>
    public bool Touches(PlanPath path)
    {
        if (_around.Contains(path.Text)) return true;
        for (var at = path; at is not null; at = at.Parent)
            if (_paths.Contains(at.Text)) return true;
        return false;
    }
}
