using System.Security.Cryptography;
using SplitBatch.Evidence;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// Every number that a write-up states stands in its ledger, and comes out the same when a script of its own works it out from the files.
/// </summary>
public class LedgerRecomputedTests(ThreeWriteUps made) : IClassFixture<ThreeWriteUps>
{
    public static TheoryData<string> Trials => [.. ThreeWriteUps.Names];

    [Theory]
    [MemberData(nameof(Trials))]
    public void The_script_read_the_files_that_are_here(string name)
    {
        var files = Recomputed.Files(name);
        Assert.True(files.Count >= 5);
        Assert.All(files,
            file => Assert.Equal(file.Value,
                Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(ThreeWriteUps.Trial(name), file.Key))))));
    }

    [Theory]
    [MemberData(nameof(Trials))]
    public void Every_claimed_number_comes_out_the_same(string name)
    {
        var claims = made.All[name].Document.AllClaims;
        Assert.True(claims.Sum(claim => claim.Numbers.Count) > 25);
        Assert.Empty(claims.Select(claim => Recomputed.Complaint(name, claim)).OfType<string>());
    }

    [Theory]
    [MemberData(nameof(Trials))]
    public void Every_number_in_a_caption_comes_out_the_same(string name)
    {
        var captions = made.All[name].Document.CaptionClaims().ToList();
        Assert.True(captions.Count >= 4);
        Assert.Empty(captions.Select(caption => Recomputed.CaptionComplaint(name, caption)).OfType<string>());
    }

    [Fact]
    public void A_number_that_is_off_by_a_thousandth_is_found_and_so_is_one_that_nobody_works_out()
    {
        var name = ThreeWriteUps.Names[0];
        var stated = made.All[name].Document.AllClaims.Single(claim => claim.Id == "dose.mass").Numbers;
        Assert.NotNull(
            Recomputed.Complaint(name,
                new Claim("dose.mass", $"{Printed.Fixed(stated[0], 1)} {Printed.Fixed(stated[1] * 1.001, 2)} "
                    + $"{Printed.Fixed(stated[2], 1)} {Printed.Fixed(stated[3], 2)}", "sum")));
        Assert.Null(
            Recomputed.Complaint(name,
                new Claim("dose.mass", $"{Printed.Fixed(stated[0], 1)} {Printed.Fixed(stated[1], 2)} {Printed.Fixed(stated[2], 1)} "
                    + $"{Printed.Fixed(stated[3], 2)}", "sum")));
        Assert.Contains("worked out nowhere else", Recomputed.Complaint(name, new Claim("dose.new", $"{Printed.Count(1)} hop", "count")),
            StringComparison.Ordinal);
        Assert.Contains("prints 42",
            Recomputed.CaptionComplaint(name,
                new Claim("caption.0", Evidence.Phrases.Sentence
                    .Of($"{new Evidence.Phrases.Quote("By guessing alone, 11 or more of 42 would come up.")}"), "read")),
                    StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Trials))]
    public void A_sentence_shows_its_claims_numbers_and_no_others(string name) => Assert.All(made.All[name].Document.AllClaims, claim =>
        Assert.All(Recomputed.Printed(claim.Sentence),
            printed => Assert.Contains(claim.Numbers, number => Recomputed.Rounds(number, printed))));

    [Theory]
    [MemberData(nameof(Trials))]
    public void No_sentence_outside_the_ledger_states_a_number(string name)
    {
        var document = made.All[name].Document;
        var trial = SplitBatch.Trials.Trial.Open(ThreeWriteUps.Trial(name));
        var words = document.Blocks.SelectMany(block => block switch
        {
            Paragraph paragraph when paragraph.Text != trial.Question && paragraph.Text != trial.Description.Why => [paragraph.Text],
            Callout callout => [callout.Text],
            Bullets bullets => bullets.Items,
            Heading heading => [heading.Text],
            _ => Enumerable.Empty<string>(),
        }).Where(text => text != trial.Title);
        Assert.All(words, text => Assert.Empty(Recomputed.Printed(text)));
        var ledger = document.LedgerTable();
        var stated = document.AllClaims.Concat(document.CaptionClaims()).Select(claim => claim.Sentence).ToList();
        Assert.Equal(stated, ledger.Rows.Select(row => (string)row[1]!));
        Assert.Equal(Enumerable.Range(1, stated.Count).Select(i => (double)i),
            ledger.Rows.Select(row => Convert.ToDouble(row[0], System.Globalization.CultureInfo.InvariantCulture)));
        Assert.All(document.AllClaims.Where(claim => claim.Numbers.Count > 0), claim => Assert.NotEmpty(claim.Sources));
    }

}
