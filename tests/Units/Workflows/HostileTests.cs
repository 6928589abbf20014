using System.Text;
using CsCheck;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>Files made to hang, exhaust or confuse the program give a clear finding after bounded work.</summary>
public class HostileTests
{
    private static IEnumerable<string> Told(string text) => Written.Bind(text).Findings.Select(finding => finding.Message);

    [Fact]
    public void A_huge_file_is_refused_by_its_size()
    {
        SourceText.Decode("crew.yaml", new byte[SourceText.LargestBytes + 1]).Findings.Single().Message.Should().Be("The file has 8,388,609 bytes; a workflow file has at most 8,388,608.");
        SourceText.TooLarge("crew.yaml", 100_000_000).Message.Should().Contain("100,000,000 bytes");
        Told(new string('a', SourceText.LargestBytes + 1)).Should().ContainSingle().Which.Should().Contain("at most");
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    [InlineData("[\n")]
    [InlineData("? ")]
    public void Deep_nesting_is_refused_and_not_followed(string opening)
    {
        var text = new StringBuilder("a:\n ");
        for (var i = 0; i < 100_000; i++)
            text.Append(opening);
        Told(text.ToString()).Should().ContainSingle().Which.Should().Match(message => message.Contains("nested more than 64 deep") || message.Contains("A key is a text"));
    }

    [Fact]
    public void Deep_indentation_is_refused_and_not_followed()
    {
        var text = new StringBuilder();
        for (var i = 0; i < 3_000; i++)
            text.Append(' ', i).Append("a:\n");
        Told(text.ToString()).Should().ContainSingle().Which.Should().Contain("nested more than 64 deep");
    }

    [Fact]
    public void Repeats_of_repeats_are_counted_as_if_written_out()
    {
        var text = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (var i = 1; i < 10; i++)
            text.Append($"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 10))}]\n");
        Told(text.ToString()).Should().ContainSingle().Which.Should().Contain("more than 2,000,000 keys and values");
    }

    [Fact]
    public void Schemes_that_double_at_every_turn_are_cut_off()
    {
        var schemes = new StringBuilder("schemes:\n  s0: { route: [{ clean: all }] }\n");
        for (var i = 1; i < 24; i++)
            schemes.Append($"  s{i}: {{ route: [{{ follow: s{i - 1} }}, {{ follow: s{i - 1} }}] }}\n");
        Told(Written.WithRoute("- follow: s23", schemes.ToString())).Should().ContainSingle().Which.Should().Contain("more than 100,000 steps");
    }

    [Fact]
    public void A_long_chain_of_schemes_is_cut_off()
    {
        var schemes = new StringBuilder("schemes:\n  s0: { route: [{ clean: all }] }\n");
        for (var i = 1; i < 5_000; i++)
            schemes.Append($"  s{i}: {{ route: [{{ follow: s{i - 1} }}] }}\n");
        Told(Written.WithRoute("- follow: s4999", schemes.ToString())).Should().ContainSingle().Which.Should().Contain("more than 24 deep");
    }

    [Fact]
    public void A_long_chain_of_mixes_is_cut_off()
    {
        var mixes = new StringBuilder("mixes:\n");
        for (var i = 5_000; i > 0; i--)
            mixes.Append($"  m{i}: {{ parts: {{ m{i - 1}: 1 }} }}\n");
        mixes.Append("  m0: { parts: { rope bone: 1 } }\n");
        Told(Written.WithRoute("- clean: all", mixes.ToString())).Should().Contain(message => message.Contains("more than 16 deep"));
    }

    [Fact]
    public void Ten_thousand_wrong_names_are_told_only_in_part()
    {
        var route = new StringBuilder();
        for (var i = 0; i < 10_000; i++)
            route.Append($"- claen{i}: all\n");
        var findings = Written.Bind(Written.WithRoute(route.ToString())).Findings;
        findings.Should().HaveCount(ReadingLimits.MostFindings + 1);
        findings.Should().Contain(finding => finding.Message.Contains("only the first 1,000 are shown"));
    }

    [Fact]
    public void A_text_of_eight_million_letters_is_no_name() =>
        Told($"batch: {new string('x', 8_000_000)}").Should().Contain(message => message.Contains("This name has 8,000,000 characters"));

    [Fact]
    public void A_key_of_two_hundred_and_one_letters_is_no_key() =>
        Told($"{new string('x', 201)}: 1").Should().Contain(message => message.Contains("This key has 201 characters"));

    [Fact]
    public void No_text_at_all_makes_reading_throw() =>
        Gen.String[Gen.Char["ab:-[]{}\"'#&*!|>?%@`, \n\t\r\\1\u202E\uD800é"], 0, 60].Sample(text =>
        {
            var bound = Written.Bind(text);
            return bound.Findings.Count > 0 || bound.Batch is not null;
        });

    [Fact]
    public void No_bytes_at_all_make_decoding_throw() =>
        Gen.Byte.Array[0, 40].Sample(bytes => SourceText.Decode("crew.yaml", bytes) is var decoded && (decoded.Source is null) == (decoded.Findings.Count > 0));

    [Fact]
    public void A_file_with_any_line_spoilt_gives_findings_or_a_batch_but_never_throws()
    {
        var lines = Written.WithRoute("- mask: glass\n  using: low-tack tape\n  as: lens\n- coat: suit\n  with: harbour black\n  drying: { cured: 2-3 d }\n- unmask: lens").Split('\n');
        Gen.Select(Gen.Int[0, lines.Length - 1], Gen.String[Gen.Char["ab:-[]{}\"'#&*, \n19²"], 0, 20], Gen.Int[0, 40]).Sample((line, text, column) =>
        {
            var spoilt = lines.ToArray();
            spoilt[line] = spoilt[line].Insert(Math.Min(column, spoilt[line].Length), text);
            var bound = Written.Bind(string.Join('\n', spoilt));
            return (bound.Batch is null) == bound.Findings.Any(finding => finding.Level == Abstractions.Level.Error);
        });
    }
}
