namespace SplitBatch.Trials;

public sealed partial class Trial
{
    /// <summary>Opens a trial folder and reads it as a whole.</summary>
    /// <param name="folder">The folder's path.</param>
    /// <exception cref="TrialFolderException">Something in the folder cannot be used; the message lists every fault.</exception>
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
    public static Trial WorkOn(string folder)
    {
        var trial = Open(folder);
        if (!trial.Description.Invented || trial.Folder.IsWorkingCopy) return trial;
        var copy = new TrialFolder(Path.Combine("work", trial.Folder.Name));
        return Open((copy.IsWorkingCopy && copy.HoldsTrial ? copy : trial.Folder.CopyTo(copy.Path)).Path);
    }

    /// <summary>Everything that is wrong or dubious in a trial folder; empty when nothing is.</summary>
    /// <param name="folder">The folder's path.</param>
    /// <param name="today">The day by which age is told before anything is brewed; today when left out.</param>
    public static IReadOnlyList<Fault> Check(string folder, DateOnly? today = null) => new TrialReader(new TrialFolder(folder), today).Read().Faults;
}
