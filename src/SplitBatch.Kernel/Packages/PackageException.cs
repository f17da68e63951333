namespace SplitBatch.Kernel.Packages;

/// <summary>A package could not be had; the message says why and what can be done.</summary>
public sealed class PackageException : Exception
{
    /// <summary>Makes an exception with a message for the reader.</summary>
    public PackageException(string message)
        : base(message)
    {
    }

    /// <summary>Makes an exception with a message for the reader and what lies behind it.</summary>
    public PackageException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>Makes an exception without words of its own.</summary>
    public PackageException()
    {
    }
}
