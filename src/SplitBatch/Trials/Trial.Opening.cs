using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

public sealed partial class Trial
{
    /// <summary>Opens a trial folder and reads it as a whole.</summary>
    /// <param name="folder">The folder's path.</param>
    /// <exception cref="TrialFolderException">Something in the folder cannot be used; the message lists every fault.</exception>
    /// <example><code>var trial = Trial.Open("my-trial");</code></example>
    public static Trial Open(string folder)
    {
        var place = new TrialFolder(folder);
        var (content, faults) = new TrialReader(place).Read();
        return content is null ? throw new TrialFolderException(place.Name, faults) : new Trial(place, content);
    }

    /// <summary>
    /// Opens a trial folder to work in. A folder of one's own is opened as it stands; an example, whose data are invented, is
    /// first copied into a folder <c>work</c> beside the notebook, so that the example stays as it came.
    /// </summary>
    /// <param name="folder">The folder's path.</param>
    /// <exception cref="TrialFolderException">Something in the folder cannot be used; the message lists every fault.</exception>
    public static Trial WorkOn(string folder) => WorkOn(folder, beside: "");

    internal static Trial WorkOn(string folder, string beside)
    {
        var trial = Open(folder);
        if (!trial.Description.Invented || trial.Folder.IsWorkingCopy) return trial;
        var copy = new TrialFolder(Path.Combine(beside, "work", trial.Folder.Name));
        return Open((copy.IsWorkingCopy && copy.HoldsTrial ? copy : trial.Folder.CopyTo(copy.Path)).Path);
    }

    /// <summary>
    /// A fresh copy of a practice trial that comes with an example, in the folder <c>practice</c>; what was tried in it before is gone.
    /// </summary>
    /// <param name="name">The practice trial's name.</param>
    /// <exception cref="TrialIncompleteException">This trial comes with no practice of that name.</exception>
    /// <exception cref="InvalidOperationException">The folder is an example and not a working copy.</exception>
    public Trial Practice(string name)
    {
        GuardExample();
        var place = new TrialFolder(Folder.PathOf(Path.Combine("practice", Guard.NotBlank(name))));
        return place.HoldsTrial
            ? Open(place.CopyTo(Folder.PathOf(Path.Combine("practice", $"{name}-copy"))).Path)
            : throw new TrialIncompleteException($"practice trial \"{name}\"",
                "it comes with the project's example; open the notebook on that", "3-lab-return");
    }

    /// <summary>Everything that is wrong or dubious in a trial folder; empty when nothing is.</summary>
    /// <param name="folder">The folder's path.</param>
    /// <param name="today">The day by which age is told before anything is brewed; today when left out.</param>
    public static IReadOnlyList<Fault> Check(string folder, DateOnly? today = null) =>
        new TrialReader(new TrialFolder(folder), today).Read().Faults;
}
