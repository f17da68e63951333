using SplitBatch.Trials.Files;
namespace SplitBatch.Trials.Seals;

public class FingerprintTests
{
    // FIPS 180-4, example of one block: SHA-256("abc"), as published by NIST with the standard.
    private const string OfAbc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    [Fact]
    public void It_is_the_SHA_256_of_the_bytes_and_can_be_read_aloud()
    {
        var print = Fingerprint.Of("abc"u8);
        Assert.Equal(OfAbc, print.Digits);
        Assert.Equal("ba78 16bf 8f01 cfea 4141", print.Spoken);
    }

    [Theory]
    [InlineData(OfAbc, true)]
    [InlineData("BA78-16BF-8F01-CFEA-4141", true)]
    [InlineData(" ba78 16bf 8f01 cfea 4141 40de", true)]
    [InlineData("ba78 16bf 8f01 cfea 4142", false)]
    [InlineData("ca7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", false)]
    public void A_note_of_it_is_compared_however_it_is_written(string note, bool same) =>
        Assert.Equal(same, Fingerprint.Of("abc"u8).Matches(note));

    [Theory]
    [InlineData("ba78 16bf 8f01 cfea 414")]
    [InlineData("")]
    [InlineData("my seal of last Tuesday evening")]
    [InlineData(OfAbc + "00")]
    public void What_is_no_fingerprint_is_refused(string note)
    {
        Assert.Contains("Accepted: the first twenty digits or more",
            Assert.Throws<ArgumentException>(() => Fingerprint.Of("abc"u8).Matches(note)).Message, StringComparison.Ordinal);
        Assert.Null(Fingerprint.Parse(note));
    }

    [Fact]
    public void All_digits_make_a_fingerprint_again() =>
        Assert.Equal(Fingerprint.Of("abc"u8), Fingerprint.Parse(OfAbc.ToUpperInvariant()));
}
