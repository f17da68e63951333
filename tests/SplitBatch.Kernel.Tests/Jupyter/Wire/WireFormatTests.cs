using System.Text;
using Xunit;

namespace SplitBatch.Kernel.Jupyter.Wire;

public class WireFormatTests
{
    private static readonly WireFormat Format = new(new MessageSigner("key"));
    private static readonly MessageHeader Header = new("7", "s", "u", "2026-01-02T03:04:05Z", "comm_info_request", "5.3");

    [Fact]
    public void What_is_written_reads_back()
    {
        var frames = Format.Write(["client"u8.ToArray()], Header, "{\"msg_id\":\"6\"}"u8.ToArray(), "{\"a\":1}"u8.ToArray());
        Assert.True(Format.TryRead(frames, out var read, out _));
        Assert.Equal(Header, read.Header);
        Assert.Equal("client"u8.ToArray(), Assert.Single(read.Identities));
        Assert.Equal("{\"a\":1}"u8.ToArray(), read.Content);
    }

    [Fact]
    public void Buffers_behind_the_content_are_allowed()
    {
        byte[][] frames = [.. Format.Write([], Header, [], "{}"u8.ToArray()), [1, 2, 3]];
        Assert.True(Format.TryRead(frames, out _, out _));
    }

    [Fact]
    public void Every_truncation_is_refused_with_a_reason()
    {
        var whole = Format.Write(["client"u8.ToArray()], Header, [], "{}"u8.ToArray());
        for (var length = 0; length < whole.Count; length++)
        {
            Assert.False(Format.TryRead([.. whole.Take(length)], out _, out var fault));
            Assert.NotEmpty(fault);
        }
    }

    [Fact]
    public void Every_changed_byte_is_refused()
    {
        var whole = Format.Write([], Header, "{}"u8.ToArray(), "{\"code\":\"1\"}"u8.ToArray());
        for (var frame = 0; frame < whole.Count; frame++)
        {
            for (var at = 0; at < whole[frame].Length; at++)
            {
                byte[][] changed = [.. whole.Select(f => (byte[])f.Clone())];
                changed[frame][at] ^= 1;
                Assert.False(Format.TryRead(changed, out _, out _), $"frame {frame}, byte {at}");
            }
        }
    }

    [Theory]
    [InlineData("not json")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{\"msg_type\":\"x\"}")]
    [InlineData("{\"msg_id\":\"x\"}")]
    public void A_signed_header_that_is_none_is_refused(string header)
    {
        var json = Encoding.UTF8.GetBytes(header);
        var signature = new MessageSigner("key").Sign(json, "{}"u8, "{}"u8, "{}"u8);
        byte[] empty = [.. "{}"u8];
        Assert.False(Format.TryRead([[.. "<IDS|MSG>"u8], signature, json, empty, empty, empty], out _, out var fault));
        Assert.Contains("header", fault, StringComparison.Ordinal);
    }
}
