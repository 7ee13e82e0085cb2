using PureHDF;

namespace MonitorSim.Traces.Formats;

/// <summary>A group of an HDF5 file with the datasets that can be columns.</summary>
/// <param name="Path">Where it is; the root is <c>/</c>.</param>
/// <param name="Datasets">Those of one dimension, in the order of the file.</param>
/// <param name="LeftOut">Why its other datasets are no columns, by name.</param>
internal sealed record Hdf5Group(string Path, IReadOnlyList<IH5Dataset> Datasets, IReadOnlyDictionary<string, string> LeftOut);

/// <summary>Finds the group of an HDF5 file that is the recording.</summary>
internal static class Hdf5Groups
{
    private const int Deepest = 16;
    private const int Most = 10_000;

    /// <summary>The only group that has datasets of one dimension.</summary>
    /// <exception cref="InputException">None has, or several have: they are listed. The place is left to the caller.</exception>
    public static Hdf5Group TheOne(IH5Group root)
    {
        var (groups, seen) = (new List<Hdf5Group>(), 0);
        Look(root, "/", 0, groups, ref seen);
        var able = groups.Where(group => group.Datasets.Count > 0).ToList();
        if (able.Count == 1) return able[0];
        if (able.Count == 0)
        {
            var others = groups.SelectMany(group => group.LeftOut.Select(other => $"'{Joined(group.Path, other.Key)}' {other.Value}")).Take(5).ToList();
            throw new InvalidRecordingException(others.Count == 0 ? "it has no dataset" : $"it has no dataset of one dimension that could be a column: {string.Join("; ", others)}",
                "write each column as a dataset of one dimension, all in one group");
        }

        throw new InvalidRecordingException($"several groups have datasets that could be columns: {string.Join("; ", able.Take(10).Select(Listed))}{(able.Count > 10 ? $"; and {able.Count - 10} more" : "")}",
            "a recording is one group: write the columns of one recording into one group, and other recordings into other files");
    }

    /// <summary>How many values a dataset of one dimension has, N x 1 and 1 x N among them; null where it has more dimensions, or none.</summary>
    public static long? LengthOf(IH5Dataset dataset) => dataset.Space is { Type: H5DataspaceType.Simple } space ? space.Dimensions switch
    {
        [var count] => checked((long)count),
        [1, var count] => checked((long)count),
        [var count, 1] => checked((long)count),
        _ => null,
    } : null;

    private static void Look(IH5Group group, string path, int depth, List<Hdf5Group> found, ref int seen)
    {
        var (datasets, leftOut, inner) = (new List<IH5Dataset>(), new SortedDictionary<string, string>(StringComparer.Ordinal), new List<IH5Group>());
        foreach (var child in group.Children())
        {
            if (++seen > Most) throw new InvalidRecordingException($"it has more than {Most} groups and datasets", "write one recording into a file");

            // MAT files keep there what cells, tables and objects are made of.
            if (depth == 0 && child.Name is "#refs#" or "#subsystem#") continue;
            if (child is IH5Group deeper) inner.Add(deeper);
            else if (child is not IH5Dataset dataset) leftOut[child.Name] = "leads to nothing in this file";
            else if (WhyNot(dataset) is { } why) leftOut[child.Name] = why;
            else datasets.Add(dataset);
        }

        // Beside a recording's columns there often are its parameters: a rate, a scale, a title.
        if (datasets.Exists(dataset => LengthOf(dataset) > 1))
        {
            foreach (var single in datasets.Where(dataset => LengthOf(dataset) <= 1).ToList())
            {
                datasets.Remove(single);
                leftOut[single.Name] = "holds one value only";
            }
        }

        found.Add(new(path, datasets, leftOut));
        if (inner.Count == 0) return;
        if (depth == Deepest) throw new InvalidRecordingException($"its groups are nested more than {Deepest} deep, or in a circle", "write the columns into one group");
        foreach (var deeper in inner) Look(deeper, Joined(path, deeper.Name), depth + 1, found, ref seen);
    }

    private static string? WhyNot(IH5Dataset dataset)
    {
        if (LengthOf(dataset) is not { } length) return dataset.Space.Dimensions is { Length: > 0 } many ? $"has {many.Length} dimensions ({string.Join(" x ", many)})" : "holds one value only";
        if (length == 0) return "is empty";
        if (dataset.Layout.Class == H5DataLayoutClass.VirtualStorage) return "is virtual: its values are in other files";
        if (dataset.AttributeExists("MATLAB_class") && dataset.Attribute("MATLAB_class").Read<string>() == "char") return "is a text of characters";
        return Hdf5Types.Reading(dataset) is null ? $"is of a type that is neither number, text nor boolean: {dataset.Type.Class}, {dataset.Type.Size} bytes" : null;
    }

    private static string Joined(string path, string name) => path == "/" ? path + name : $"{path}/{name}";

    private static string Listed(Hdf5Group group) =>
        $"'{group.Path}' with {string.Join(", ", group.Datasets.Take(5).Select(dataset => dataset.Name))}{(group.Datasets.Count > 5 ? ", …" : "")}";
}
