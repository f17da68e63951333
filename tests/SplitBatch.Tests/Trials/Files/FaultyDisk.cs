using Microsoft.Win32.SafeHandles;

namespace SplitBatch.Trials.Files;

/// <summary>What goes wrong.</summary>
internal enum Failure
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The disk is full; half of what was to be written is there.</summary>
    Full,

    /// <summary>This account may not.</summary>
    Refused,

    /// <summary>This call and all that follow fail, those that tidy up as well.</summary>
    Gone,

    /// <summary>The program ends at this call, without tidying up.</summary>
    Killed,
}

/// <summary>The program was killed: nothing catches it.</summary>
internal sealed class KilledException : Exception;

/// <summary>A disk that fails at one call, counted from 0.</summary>
/// <param name="failAt">Which call.</param>
/// <param name="failure">How.</param>
/// <param name="cut">How many bytes of a write reach the disk before it fails.</param>
internal sealed class FaultyDisk(int failAt = -1, Failure failure = Failure.None, int cut = 0) : Disk
{
    private readonly List<(string Name, int Length)> calls = [];
    private bool killed;

    /// <summary>The calls so far, and how many bytes were to be written.</summary>
    public IReadOnlyList<(string Name, int Length)> Calls => calls;

    public override SafeFileHandle Open(string path, FileMode mode)
    {
        Reach(mode == FileMode.Open ? "open" : "create");
        return base.Open(path, mode);
    }

    public override byte[] Read(SafeFileHandle file)
    {
        Reach("read");
        return base.Read(file);
    }

    public override void Write(SafeFileHandle file, ReadOnlySpan<byte> bytes, long at)
    {
        if (calls.Count == failAt && !killed) base.Write(file, bytes[..Math.Min(cut, bytes.Length)], at);
        Reach("write", bytes.Length);
        base.Write(file, bytes, at);
    }

    public override void Flush(SafeFileHandle file)
    {
        Reach("flush");
        base.Flush(file);
    }

    public override void Cut(SafeFileHandle file, long length)
    {
        Reach("cut");
        base.Cut(file, length);
    }

    public override void Share(SafeFileHandle file, string folder)
    {
        Reach("share");
        base.Share(file, folder);
    }

    public override void Move(string from, string to)
    {
        Reach("name");
        base.Move(from, to);
    }

    public override void Delete(string path)
    {
        Reach("delete");
        base.Delete(path);
    }

    private void Reach(string name, int length = 0)
    {
        if (killed) throw new KilledException();
        var call = calls.Count;
        calls.Add((name, length));
        if (call != failAt && !(failure == Failure.Gone && call > failAt)) return;
        switch (failure)
        {
            case Failure.Full: throw new IOException("No space left on device.");
            case Failure.Gone: throw new IOException("Input/output error.");
            case Failure.Refused: throw new UnauthorizedAccessException("Permission denied.");
            case Failure.Killed:
                killed = true;
                throw new KilledException();
        }
    }
}
