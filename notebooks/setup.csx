// What every lesson loads first: the library as `dotnet build -c Release` leaves it, and a way to show a picture.
#r "../src/MonitorSim.Cli/bin/Release/net10.0/MonitorSim.dll"
#r "../src/MonitorSim.Cli/bin/Release/net10.0/MonitorSim.Plots.dll"
#r "../src/MonitorSim.Cli/bin/Release/net10.0/SkiaSharp.dll"

using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Runtime.InteropServices;
using MonitorSim;
using MonitorSim.Plans;
using MonitorSim.Traces;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

// The notebook's kernel does not look for native code where the library's pictures have theirs.
NativeLibrary.SetDllImportResolver(typeof(SkiaSharp.SKTypeface).Assembly, (name, _, _) =>
{
    var architecture = RuntimeInformation.ProcessArchitecture.ToString().ToLowerInvariant();
    var (folder, extension) = OperatingSystem.IsWindows() ? ($"win-{architecture}", ".dll") : OperatingSystem.IsMacOS() ? ("osx", ".dylib") : ($"linux-{architecture}", ".so");
    var path = Path.Combine(Path.GetDirectoryName(typeof(SkiaSharp.SKTypeface).Assembly.Location), "runtimes", folder, "native", name + extension);
    return NativeLibrary.TryLoad(path, out var handle) ? handle : IntPtr.Zero;
});

void Show(string picture) => display(HTML($"<img alt=\"{Path.GetFileNameWithoutExtension(picture)}\" src=\"data:image/png;base64,{Convert.ToBase64String(File.ReadAllBytes(picture))}\">"));
