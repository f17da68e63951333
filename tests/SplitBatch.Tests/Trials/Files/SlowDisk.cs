using Microsoft.Win32.SafeHandles;

namespace SplitBatch.Trials.Files;

/// <summary>A disk that takes a few bytes at a time, so that a program can be killed in the middle of a row.</summary>
internal sealed class SlowDisk(int pieceSize) : Disk
{
    public override void Write(SafeFileHandle file, ReadOnlySpan<byte> bytes, long at)
    {
        for (var done = 0; done < bytes.Length; done += pieceSize)
        {
            base.Write(file, bytes[done..Math.Min(done + pieceSize, bytes.Length)], at + done);
            Flush(file);
        }
    }
}
