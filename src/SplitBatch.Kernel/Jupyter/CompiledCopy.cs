using System.Runtime.InteropServices;
using System.Security;
using System.Text.RegularExpressions;
using SplitBatch.Kernel.Packages;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>
/// A copy of the built command with its libraries compiled for this machine ahead of time (ReadyToRun), so that a kernel does not compile
/// the compiler anew at every start. Made once, when the kernel is installed; needs the .NET SDK and, once, its compiler package.
/// </summary>
public static partial class CompiledCopy
{
    /// <summary>The folder's name beside <c>kernel.json</c>.</summary>
    public const string FolderName = "program";

    /// <summary>
    /// What a start and a first chart run through, by the beginning of its name; the rest would take longer to compile than it gives back.
    /// </summary>
    private static readonly string[] Compiled =
    [
        "SplitBatch", "Microsoft.DotNet.Interactive", "Microsoft.CodeAnalysis.dll", "Microsoft.CodeAnalysis.CSharp.dll",
            "Microsoft.CodeAnalysis.Scripting", "Microsoft.CodeAnalysis.CSharp.Scripting",
        "Microsoft.CodeAnalysis.Workspaces", "Microsoft.CodeAnalysis.CSharp.Workspaces", "System.Reactive", "System.Composition", "NetMQ",
            "AsyncIO", "NaCl",
        "FSharp.Core", "Plotly.NET", "DynamicObj", "Newtonsoft.Json", "Humanizer",
    ];

    /// <summary>Makes the copy.</summary>
    /// <param name="program">The built command's library, <c>SplitBatch.Cli.dll</c>.</param>
    /// <param name="target">The folder to make; replaced when it is there.</param>
    /// <param name="cancellation">Ends the work.</param>
    /// <returns>Null when it was made; otherwise why not, in words for the reader.</returns>
    public static async Task<string?> MakeAsync(string program, string target, CancellationToken cancellation = default)
    {
        var built = Path.GetDirectoryName(Path.GetFullPath(program))!;
        var work = Directory.CreateTempSubdirectory("splitbatch-compile-");
        try
        {
            var fault = await PublishAsync(built, work.FullName, cancellation).ConfigureAwait(false);
            if (fault is not null) return fault;
            if (!IsCompiled(Path.Combine(work.FullName, "out", Path.GetFileName(program))))
                return "the SDK's compiler left the command as it was";
            if (Directory.Exists(target)) Directory.Delete(target, recursive: true);
            Copy(built, target);
            foreach (var compiled in Directory.EnumerateFiles(Path.Combine(work.FullName, "out"), "*.dll"))
            {
                // Only what came from the built folder: the project's own empty library and the framework's are not.
                var place = Path.Combine(target, Path.GetFileName(compiled));
                if (File.Exists(place)) File.Copy(compiled, place, overwrite: true);
            }

            return null;
        }
        finally
        {
            work.Delete(recursive: true);
        }
    }

    /// <summary>Whether the command is compiled ahead of time already.</summary>
    /// <param name="program">The command's library.</param>
    public static bool IsCompiled(string program)
    {
        if (!File.Exists(program)) return false;
        using var stream = File.OpenRead(program);
        using var image = new System.Reflection.PortableExecutable.PEReader(stream);
        try
        {
            return image.PEHeaders.CorHeader is { ManagedNativeHeaderDirectory.Size: > 0 };
        }
        catch (BadImageFormatException)
        {
            return false;
        }
    }

    private static async Task<string?> PublishAsync(string built, string work, CancellationToken cancellation)
    {
        SdkProject.Write(work, "compile.csproj", Project(built));
        try
        {
            var (exitCode, said) = await SdkProject.CallAsync(
                work, ["publish", "compile.csproj", "--configuration", "Release", "--output", "out", "--nologo", "--verbosity", "quiet",
                    "-nodeReuse:false"], cancellation).ConfigureAwait(false);
            return exitCode == 0 ? null : Fault().Match(said) is { Success: true } fault ? fault.Groups["what"].Value.Trim() : said.Trim();
        }
        catch (System.ComponentModel.Win32Exception error)
        {
            return $"the .NET SDK was not found ({error.Message})";
        }
    }

    private static string Project(string built) => $"""
        <Project Sdk="Microsoft.NET.Sdk">
          <PropertyGroup>
            <TargetFramework>net{Environment.Version.Major}.0</TargetFramework>
            <RuntimeIdentifier>{RuntimeInformation.RuntimeIdentifier}</RuntimeIdentifier>
            <SelfContained>false</SelfContained>
            <UseAppHost>false</UseAppHost>
            <PublishReadyToRun>true</PublishReadyToRun>
            <EnableDefaultItems>false</EnableDefaultItems>
            <NuGetAudit>false</NuGetAudit>
            <NoWarn>$(NoWarn);CS2008</NoWarn>
          </PropertyGroup>
          <ItemGroup>
            <Reference Include="{SecurityElement.Escape(built)}/*.dll" />
        {string.Join('\n', Excluded(built).Select(n => $"    <PublishReadyToRunExclude Include=\"{n}\" />"))}
          </ItemGroup>
        </Project>
        """;

    private static IEnumerable<string> Excluded(string built) =>
        Directory.EnumerateFiles(built, "*.dll").Select(f => Path.GetFileName(f))
            .Where(n => !Compiled.Any(c => n.StartsWith(c, StringComparison.Ordinal)));

    private static void Copy(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var file in Directory.EnumerateFiles(from).Where(f => !f.EndsWith(".pdb", StringComparison.Ordinal)))
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)), overwrite: true);
        foreach (var folder in Directory.EnumerateDirectories(from)) Copy(folder, Path.Combine(to, Path.GetFileName(folder)));
    }

    [GeneratedRegex(@"error (?<what>[A-Z]+\d+: .*?)(\[[^\]\r\n]*\])?\r?$", RegexOptions.Multiline)]
    private static partial Regex Fault();
}
