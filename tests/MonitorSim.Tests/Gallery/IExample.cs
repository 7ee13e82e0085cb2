namespace MonitorSim.Tests.Gallery;

/// <summary>A small program that draws; the gallery shows what it draws and how. It runs beside the demo's recordings.</summary>
internal interface IExample
{
    /// <summary>What the picture answers.</summary>
    string Title { get; }

    /// <summary>Which of the pictures drawn is shown, without its extension.</summary>
    string Picture { get; }

    /// <summary>Draws into a folder.</summary>
    void Draw(string folder);
}
