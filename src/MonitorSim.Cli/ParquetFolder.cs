namespace MonitorSim.Cli;

/// <summary>Tables as Parquet files of a folder: one file a table, to which each recording adds its rows. They are there when all are whole, or none is.</summary>
internal sealed class ParquetFolder(string folder, CancellationToken cancel) : IDisposable
{
    private readonly Dictionary<string, ParquetSheet> _files = [];

    /// <summary>Writes tables that nobody adds to; where there is no folder, none.</summary>
    public static void Write(string? folder, IReadOnlyList<Sheet> sheets, CancellationToken cancel)
    {
        if (folder is null) return;
        using var files = new ParquetFolder(folder, cancel);
        files.Add(sheets);
        files.Complete();
    }

    /// <summary>Adds rows to each table's file; a table's columns are the same each time.</summary>
    public void Add(IReadOnlyList<Sheet> sheets)
    {
        foreach (var sheet in sheets)
        {
            if (!_files.TryGetValue(sheet.Name, out var file)) _files[sheet.Name] = file = new(Path.Combine(folder, sheet.Name + ".parquet"), sheet.Columns, cancel);
            file.Add(sheet.Rows);
        }
    }

    /// <summary>Nothing more will be added: the files take their names.</summary>
    public void Complete()
    {
        foreach (var file in _files.Values) file.End();
        foreach (var file in _files.Values) file.Complete();
    }

    public void Dispose()
    {
        foreach (var file in _files.Values) file.Dispose();
    }
}
