using Microsoft.Playwright;

namespace MonitorSim.BrowserTests;

/// <summary>One headless Chromium for all tests. MONITORSIM_CHROMIUM names another than the one that is installed; where there is none, tests say that they are skipped.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string? Program = Environment.GetEnvironmentVariable("MONITORSIM_CHROMIUM") is { Length: > 0 } named ? named
        : new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser" }.FirstOrDefault(File.Exists);

    private readonly string _folder = Directory.CreateTempSubdirectory("monitorsim-pages").FullName;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async Task InitializeAsync()
    {
        if (Program is null) return;
        _playwright = await Playwright.CreateAsync();
        // Build servers run as root in a container, where the sandbox cannot be set up; the pages are our own.
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Program, ChromiumSandbox = false });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>Opens a page from disk, without a network.</summary>
    /// <param name="html">The page.</param>
    /// <param name="width">Of the window, pixels.</param>
    internal async Task<OpenPage> Open(string html, int width = 1200)
    {
        Skip.If(_browser is null, "no Chromium: install Debian's package chromium, or name a program by MONITORSIM_CHROMIUM");
        var file = Path.Combine(_folder, $"{Guid.NewGuid():N}.html");
        await File.WriteAllTextAsync(file, html);
        var context = await _browser!.NewContextAsync(new() { Offline = true, ViewportSize = new() { Width = width, Height = 900 } });
        return await OpenPage.From(await context.NewPageAsync(), new Uri(file));
    }
}
