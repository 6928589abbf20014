using System.Text;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>What is wrong with the writing of a file, whatever it says.</summary>
public class YamlTests
{
    private static Reading Read(string text) => Reader.Read(new SourceText("crew.yaml", text));

    /// <summary>The places and messages of all findings.</summary>
    private static IEnumerable<string> Told(string text) => Read(text).Findings.Select(finding => $"{finding.Place.Line}:{finding.Place.Column} {finding.Message}");

    [Fact]
    public void Every_key_and_value_keeps_its_place()
    {
        var root = (MappingNode)Read("# a crew\nbatch: Crew\nkits:\n  - kit: Divers\n    list: [one, 'two']\n").Tree!.Root;

        root.Entries[0].Key.Place.Should().Be(new Place("crew.yaml", 2, 1));
        root.Entries[0].Value.Place.Should().Be(new Place("crew.yaml", 2, 8));
        var kit = (MappingNode)((ListNode)root["kits"]!).Items[0];
        kit.Place.Should().Be(new Place("crew.yaml", 4, 5));
        var second = (TextNode)((ListNode)kit["list"]!).Items[1];
        (second.Text, second.Style, second.Line, second.Column).Should().Be(("two", TextStyle.Quoted, 5, 17));
    }

    [Theory]
    [InlineData("batch: [Crew\nkits: 1\n", "1:8 The ‘[’ here is never closed.")]
    [InlineData("batch: { a: b\nkits: 1\n", "1:8 The ‘{’ here is never closed.")]
    [InlineData("batch: \"Crew\nkits: 1\n", "1:8 A quote that opens here is not closed on its line.")]
    [InlineData("batch: 'Crew", "1:8 A quote that opens here is never closed.")]
    [InlineData("batch:\n\t- one\n", "2:1 The line is indented with a tab.")]
    [InlineData("route:\n  - clean: all\n\t  - undercoat: all\n", "3:1 The line is indented with a tab.")]
    [InlineData("batch: a: b\n", "1:9 There is a second ‘: ’ here, or the line is indented further than the one above allows.")]
    [InlineData("batch: 1\nkits\npaints: 2\n", "2:1 Here should stand ‘key: value’, in line with the keys above it.")]
    [InlineData("batch: @one\n", "1:8 A value cannot begin with ‘@’.")]
    [InlineData("batch: %one\n", "1:8 A value cannot begin with ‘%’.")]
    [InlineData("batch: \"\\q\"\n", "1:8 The text in double quotes holds a backslash that YAML does not understand.")]
    [InlineData("kits:\n- b\n c: d\n", "3:3 There is a second ‘: ’ here, or the line is indented further than the one above allows.")]
    [InlineData("- a\nb: 1\n", "2:1 This line does not fit the list above it.")]
    [InlineData("a: 1\na: 2\n", "2:1 The key ‘a’ is given twice.")]
    [InlineData("a: { b: 1, b: 2 }\n", "1:12 The key ‘b’ is given twice.")]
    [InlineData("a: *b\n", "1:4 ‘*b’ repeats something that no ‘&b’ above it marks.")]
    [InlineData("a: &b [*b]\n", "1:8 ‘*b’ stands inside the very thing it repeats.")]
    [InlineData("a: &b { c: 1 }\nd:\n  <<: *b\n", "3:3 Mappings are not merged with ‘<<’ in a workflow.")]
    [InlineData("a: !paint b\n", "1:4 The type mark ‘!paint’ means nothing in a workflow.")]
    [InlineData("a: !!binary b\n", "1:4 The type mark ‘!!binary’ means nothing in a workflow.")]
    [InlineData("a: 1\n---\nb: 2\n", "2:1 A second document begins here; a workflow file holds one.")]
    [InlineData("? [a, b]\n: 1\n", "1:3 A key is a text, but here stands a list.")]
    [InlineData("a: { b: 2,5 mL }\n", "1:9 The comma in ‘2,5 mL’ parts two entries.")]
    [InlineData("a: one\u202Eowt\n", "1:4 The text that begins here holds U+202E, which turns the direction of the text.")]
    [InlineData("b\u200Bb: 1\n", "1:1 The text that begins here holds U+200B, which cannot be seen.")]
    [InlineData("a: \"\\e[31m\"\n", "1:4 The text that begins here holds U+001B, a control character.")]
    [InlineData("a: \"\\u2066x\"\n", "1:4 The text that begins here holds U+2066, which turns the direction of the text.")]
    [InlineData("", "1:1 The file is empty.")]
    [InlineData("# nothing\n", "1:1 The file is empty.")]
    [InlineData("---\n...\n", "1:1 The file is empty.")]
    public void A_mistake_is_told_once_in_plain_words(string text, string expected) => Told(text).Should().Equal(expected);

    [Fact]
    public void Both_places_of_a_repeated_key_are_told()
    {
        var finding = Read("a: 1\nb: 2\na: 3\n").Findings.Single();
        finding.Related.Should().Equal(new Related(new Place("crew.yaml", 1, 1), "first given here"));
    }

    [Fact]
    public void After_a_mistake_reading_goes_on_at_the_next_key() =>
        Told("""
            batch: [Crew
            paints:
              one: 'two
            mixes:
              a: 1
              a: 2
            kits: @
            """).Should().Equal(
            "1:8 The ‘[’ here is never closed.",
            "3:8 A quote that opens here is never closed.",
            "6:3 The key ‘a’ is given twice.",
            "7:7 A value cannot begin with ‘@’.");

    [Fact]
    public void A_repeat_serves_where_it_is_not_abused()
    {
        var root = (MappingNode)Read("a: &base { air: 19 °C, humidity: 55 % }\nb: *base\n").Tree!.Root;
        root["b"].Should().BeSameAs(root["a"]);
    }

    [Theory]
    [InlineData("batch: Crew\r\nkits: one\r\n")]
    [InlineData("\uFEFFbatch: Crew\nkits: one\n")]
    [InlineData("batch: Crew\rkits: one\r")]
    [InlineData("%YAML 1.2\n---\nbatch: Crew\nkits: one\n...\n")]
    [InlineData("batch: !!str Crew\nkits: one")]
    [InlineData("# \u202E in a remark hurts nobody\nbatch: Crew\nkits: one")]
    public void Other_ways_to_write_the_same_are_read_alike(string text)
    {
        var reading = Read(text);
        reading.Findings.Should().BeEmpty();
        ((MappingNode)reading.Tree!.Root).Entries.Select(entry => $"{entry.Key.Text}={((TextNode)entry.Value).Text}").Should().Equal("batch=Crew", "kits=one");
    }

    [Fact]
    public void Bytes_are_decoded_by_their_mark()
    {
        const string Text = "batch: Größe °C ☂\n";
        foreach (var encoding in new Encoding[] { new UTF8Encoding(false), new UTF8Encoding(true), new UnicodeEncoding(false, true), new UnicodeEncoding(true, true) })
        {
            var decoded = SourceText.Decode("crew.yaml", [.. encoding.GetPreamble(), .. encoding.GetBytes(Text)]);
            decoded.Findings.Should().BeEmpty();
            decoded.Source.Should().Be(new SourceText("crew.yaml", Text));
        }
    }

    [Theory]
    [InlineData(new byte[] { 0x61, 0x0A, 0xC3, 0xA4, 0xFF, 0x62 }, 2, 2, "The byte FF here is not UTF-8 text.")]
    [InlineData(new byte[] { 0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0 }, 3, 1, "There is a zero byte here")]
    [InlineData(new byte[] { 0x61, 0, 0x62, 0 }, 1, 2, "There is a zero byte here")]
    [InlineData(new byte[] { 0xFF, 0xFE, 0, 0, 0x61, 0, 0, 0 }, 1, 1, "UTF-32")]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61 }, 1, 1, "UTF-16")]
    [InlineData(new byte[] { 0xFF, 0xFE, 0, 0xD8, 0x61, 0 }, 1, 1, "UTF-16")]
    [InlineData(new byte[] { 0xC3 }, 1, 1, "The byte C3 here is not UTF-8 text.")]
    public void Bytes_that_are_no_text_are_refused_at_their_place(byte[] bytes, int line, int column, string says)
    {
        var decoded = SourceText.Decode("crew.yaml", bytes);
        decoded.Source.Should().BeNull();
        decoded.Findings.Single().Place.Should().Be(new Place("crew.yaml", line, column));
        decoded.Findings.Single().Message.Should().Contain(says);
    }
}
