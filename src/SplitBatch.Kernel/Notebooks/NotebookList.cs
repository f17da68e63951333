using System.Text.RegularExpressions;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>Finds the notebooks that paths name.</summary>
internal static partial class NotebookList
{
    /// <summary>The files, each path's in the order of the paths, a folder's by name with numbers in order (2 before 10).</summary>
    /// <exception cref="NotebookException">A path is missing or no notebook, a folder holds none, or two would have the same
    /// name.</exception>
    public static IReadOnlyList<string> Expand(IEnumerable<string> paths)
    {
        var files = paths.SelectMany(Files).DistinctBy(Path.GetFullPath).ToList();
        if (files.GroupBy(Path.GetFileName, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } same)
        {
            throw new NotebookException(
                $"Two notebooks are called {same.Key}: {string.Join(" and ", same)}. Their results would overwrite each other; run "
                + $"them apart.");
        }

        return files;
    }

    private static IEnumerable<string> Files(string path)
    {
        if (File.Exists(path))
        {
            return path.EndsWith(".ipynb", StringComparison.OrdinalIgnoreCase)
                ? [path]
                : throw new NotebookException($"{path} is not a notebook; a notebook's name ends in .ipynb.");
        }

        if (!Directory.Exists(path)) throw new NotebookException($"There is no file or folder {path}.");
        var found = Directory.EnumerateFiles(path, "*.ipynb").Where(f => !Path.GetFileName(f).StartsWith('.')).ToList();
        if (found.Count == 0) throw new NotebookException($"The folder {path} holds no notebook (no file whose name ends in .ipynb).");
        return found.OrderBy(f => Digits().Replace(Path.GetFileName(f), m => m.Value.PadLeft(12, '0')), StringComparer.OrdinalIgnoreCase);
    }

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Digits();
}
