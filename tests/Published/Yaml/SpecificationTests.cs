using System.Text;
using Pipeline.Workflows;

namespace Pipeline.Tests.Published.Yaml;

/// <summary>
/// Examples of the YAML 1.2 specification (revision 1.2.2, https://yaml.org/spec/1.2.2/), read as a workflow file is: every scalar is
/// text. Input and meaning are quoted from memory, long ones shortened, with people and clubs renamed. What a workflow leaves out on purpose (several documents, keys that are no text,
/// own types, merge keys) is in <see cref="What_a_workflow_leaves_out_is_refused_with_its_place"/>.
/// Outcomes are written in a small notation: <c>{key=value, …}</c>, <c>[item, …]</c>, <c>"text"</c>.
/// </summary>
public class SpecificationTests
{
    private static string Shape(SyntaxNode node) => node switch
    {
        MappingNode mapping => "{" + string.Join(", ", mapping.Entries.Select(entry => $"{entry.Key.Text}={Shape(entry.Value)}")) + "}",
        ListNode list => "[" + string.Join(", ", list.Items.Select(Shape)) + "]",
        TextNode text => "\"" + text.Text.Replace("\n", "\\n", StringComparison.Ordinal).Replace("\t", "\\t", StringComparison.Ordinal) + "\"",
        _ => throw new InvalidOperationException(),
    };

    [Theory]
    [InlineData("2.1 Sequence of Scalars", "- Mara Quill\n- Sten Oar\n- Ketil Buoy\n", "[\"Mara Quill\", \"Sten Oar\", \"Ketil Buoy\"]")]
    [InlineData("2.2 Mapping Scalars to Scalars", "hr:  65    # Home runs\navg: 0.278 # Batting average\nrbi: 147   # Runs Batted In\n", "{hr=\"65\", avg=\"0.278\", rbi=\"147\"}")]
    [InlineData("2.3 Mapping Scalars to Sequences", "american:\n- Breakwater\n- Dockside\nnational:\n- Netmenders\n", "{american=[\"Breakwater\", \"Dockside\"], national=[\"Netmenders\"]}")]
    [InlineData("2.4 Sequence of Mappings", "-\n  name: Mara Quill\n  hr:   65\n-\n  name: Sten Oar\n  hr:   63\n", "[{name=\"Mara Quill\", hr=\"65\"}, {name=\"Sten Oar\", hr=\"63\"}]")]
    [InlineData("2.5 Sequence of Sequences", "- [name        , hr, avg  ]\n- [Mara Quill, 65, 0.278]\n", "[[\"name\", \"hr\", \"avg\"], [\"Mara Quill\", \"65\", \"0.278\"]]")]
    [InlineData("2.6 Mapping of Mappings", "Mara Quill: {hr: 65, avg: 0.278}\nSten Oar: {\n    hr: 63,\n    avg: 0.288,\n  }\n", "{Mara Quill={hr=\"65\", avg=\"0.278\"}, Sten Oar={hr=\"63\", avg=\"0.288\"}}")]
    [InlineData("2.9 Single Document with Two Comments", "---\nhr: # 1998 hr ranking\n- Mara Quill\n- Sten Oar\n# 1998 rbi ranking\nrbi:\n- Sten Oar\n", "{hr=[\"Mara Quill\", \"Sten Oar\"], rbi=[\"Sten Oar\"]}")]
    [InlineData("2.10 Node for \"Sten Oar\" appears twice", "---\nhr:\n- Mara Quill\n# Following node labeled SS\n- &SS Sten Oar\nrbi:\n- *SS # Subsequent occurrence\n- Ketil Buoy\n", "{hr=[\"Mara Quill\", \"Sten Oar\"], rbi=[\"Sten Oar\", \"Ketil Buoy\"]}")]
    [InlineData("2.12 Compact Nested Mapping", "---\n# Products purchased\n- item    : Super Hoop\n  quantity: 1\n- item    : Basketball\n  quantity: 4\n", "[{item=\"Super Hoop\", quantity=\"1\"}, {item=\"Basketball\", quantity=\"4\"}]")]
    [InlineData("2.13 In literals, newlines are preserved", "# ASCII Art\n--- |\n  \\//||\\/||\n  // ||  ||__\n", "\"\\//||\\/||\\n// ||  ||__\\n\"")]
    [InlineData("2.14 In the folded scalars, newlines become spaces", "--- >\n  Mara Quill's\n  year was crippled\n  by a knee injury.\n", "\"Mara Quill's year was crippled by a knee injury.\\n\"")]
    [InlineData("2.15 Folded newlines are preserved for more indented and blank lines", "--- >\n Sten Oar completed another\n fine season with great stats.\n\n   63 Home Runs\n   0.288 Batting Average\n\n What a year!\n", "\"Sten Oar completed another fine season with great stats.\\n\\n  63 Home Runs\\n  0.288 Batting Average\\n\\nWhat a year!\\n\"")]
    [InlineData("2.16 Indentation determines scope", "name: Mara Quill\naccomplishment: >\n  Mark set a major league\n  home run record in 1998.\nstats: |\n  65 Home Runs\n  0.278 Batting Average\n", "{name=\"Mara Quill\", accomplishment=\"Mark set a major league home run record in 1998.\\n\", stats=\"65 Home Runs\\n0.278 Batting Average\\n\"}")]
    [InlineData("2.17 Quoted Scalars", "unicode: \"Oar did fine.\\u263A\"\nhex esc: \"\\x0d\\x0a is \\r\\n\"\nsingle: '\"Howdy!\" he cried.'\nquoted: ' # Not a ''comment''.'\n", "{unicode=\"Oar did fine.☺\", hex esc=\"\r\\n is \r\\n\", single=\"\"Howdy!\" he cried.\", quoted=\" # Not a 'comment'.\"}")]
    [InlineData("2.18 Multi-line Flow Scalars", "plain:\n  This unquoted scalar\n  spans many lines.\n\nquoted: \"So does this\n  quoted scalar.\\n\"\n", "{plain=\"This unquoted scalar spans many lines.\", quoted=\"So does this quoted scalar.\\n\"}")]
    [InlineData("2.19 Integers", "canonical: 12345\ndecimal: +12,345\noctal: 0o14\nhexadecimal: 0xC\n", "{canonical=\"12345\", decimal=\"+12,345\", octal=\"0o14\", hexadecimal=\"0xC\"}")]
    [InlineData("2.20 Floating Point", "exponential: 12.3015e+02\nnegative infinity: -.inf\nnot a number: .nan\n", "{exponential=\"12.3015e+02\", negative infinity=\"-.inf\", not a number=\".nan\"}")]
    [InlineData("2.21 Miscellaneous", "null:\nbooleans: [ true, false ]\nstring: '012345'\n", "{null=\"\", booleans=[\"true\", \"false\"], string=\"012345\"}")]
    [InlineData("2.22 Timestamps", "canonical: 2001-12-15T02:59:43.1Z\nspaced: 2001-12-14 21:59:43.10 -5\ndate: 2002-12-14\n", "{canonical=\"2001-12-15T02:59:43.1Z\", spaced=\"2001-12-14 21:59:43.10 -5\", date=\"2002-12-14\"}")]
    [InlineData("5.3 Block Structure Indicators", "sequence:\n- one\n- two\nmapping:\n  sky: blue\n  sea : green\n", "{sequence=[\"one\", \"two\"], mapping={sky=\"blue\", sea=\"green\"}}")]
    [InlineData("5.4 Flow Collection Indicators", "sequence: [ one, two, ]\nmapping: { sky: blue, sea: green }\n", "{sequence=[\"one\", \"two\"], mapping={sky=\"blue\", sea=\"green\"}}")]
    [InlineData("5.5 Comment Indicator, with a node", "# Comment only.\na: 1\n", "{a=\"1\"}")]
    [InlineData("5.7 Block Scalar Indicators", "literal: |\n  some\n  text\nfolded: >\n  some\n  text\n", "{literal=\"some\\ntext\\n\", folded=\"some text\\n\"}")]
    [InlineData("5.8 Quoted Scalar Indicators", "single: 'text'\ndouble: \"text\"\n", "{single=\"text\", double=\"text\"}")]
    [InlineData("5.12 Tabs and Spaces, between tokens", "quoted:\t\"Quoted\tvalue\"\n", "{quoted=\"Quoted\\tvalue\"}")]
    [InlineData("6.1 Indentation Spaces", "  # Leading comment line spaces are\n  # neither content nor indentation.\n\nNot indented:\n By one space: |\n    By four\n      spaces\n Flow style: [    # Leading spaces\n   By two,        # in flow style\n  Also by two,    # are neither\n    Still by two  # content nor\n    ]             # indentation.\n", "{Not indented={By one space=\"By four\\n  spaces\\n\", Flow style=[\"By two\", \"Also by two\", \"Still by two\"]}}")]
    [InlineData("6.9 Separated Comment", "key:    # Comment\n  value\n", "{key=\"value\"}")]
    [InlineData("7.4 Double Quoted Implicit Keys, block only", "\"implicit block key\" : [\n  \"item\",\n ]\n", "{implicit block key=[\"item\"]}")]
    [InlineData("7.5 Double Quoted Line Breaks", "\"folded \nto a space,\t\n \nto a line feed, or \t\\\n \\ \tnon-content\"\n", "\"folded to a space,\\nto a line feed, or \\t \\tnon-content\"")]
    [InlineData("7.7 Single Quoted Characters", "'here''s to \"quotes\"'\n", "\"here's to \"quotes\"\"")]
    [InlineData("7.10 Plain Characters", "- ::vector\n- \": - ()\"\n- Up, up, and away!\n- -123\n- https://example.com/foo#bar\n- [ ::vector, \": - ()\", \"Up, up and away!\", -123 ]\n", "[\"::vector\", \": - ()\", \"Up, up, and away!\", \"-123\", \"https://example.com/foo#bar\", [\"::vector\", \": - ()\", \"Up, up and away!\", \"-123\"]]")]
    [InlineData("7.12 Plain Lines", "1st non-empty\n\n 2nd non-empty \n\t3rd non-empty\n", "\"1st non-empty\\n2nd non-empty 3rd non-empty\"")]
    [InlineData("7.13 Flow Sequence", "- [ one, two, ]\n- [three ,four]\n", "[[\"one\", \"two\"], [\"three\", \"four\"]]")]
    [InlineData("7.14 Flow Sequence Entries", "[\n\"double\n quoted\", 'single\n           quoted',\nplain\n text, [ nested ],\nsingle: pair,\n]\n", "[\"double quoted\", \"single quoted\", \"plain text\", [\"nested\"], {single=\"pair\"}]")]
    [InlineData("7.15 Flow Mappings", "- { one : two , three: four , }\n- {five: six,seven : eight}\n", "[{one=\"two\", three=\"four\"}, {five=\"six\", seven=\"eight\"}]")]
    [InlineData("8.1 Block Scalar Header", "- | # Empty header\n literal\n- >1 # Indentation indicator\n  folded\n- |+ # Chomping indicator\n keep\n\n- >1- # Both indicators\n  strip\n", "[\"literal\\n\", \" folded\\n\", \"keep\\n\\n\", \" strip\"]")]
    [InlineData("8.4 Chomping Final Line Break", "strip: |-\n  text\nclip: |\n  text\nkeep: |+\n  text\n", "{strip=\"text\", clip=\"text\\n\", keep=\"text\\n\"}")]
    [InlineData("8.7 Literal Scalar", "|\n literal\n \ttext\n\n\n", "\"literal\\n\\ttext\\n\"")]
    [InlineData("8.9 Folded Scalar", ">\n folded\n text\n\n\n", "\"folded text\\n\"")]
    [InlineData("8.14 Block Sequence", "block sequence:\n  - one\n  - two : three\n", "{block sequence=[\"one\", {two=\"three\"}]}")]
    [InlineData("8.15 Block Sequence Entry Types", "- # Empty\n- |\n block node\n- - one # Compact\n  - two # sequence\n- one: two # Compact mapping\n", "[\"\", \"block node\\n\", [\"one\", \"two\"], {one=\"two\"}]")]
    [InlineData("8.16 Block Mappings", "block mapping:\n key: value\n", "{block mapping={key=\"value\"}}")]
    public void An_example_is_read_as_it_is_meant(string example, string yaml, string meaning)
    {
        var reading = Reader.Read(new SourceText("example.yaml", yaml));
        reading.Findings.Should().BeEmpty(example);
        Shape(reading.Tree!.Root).Should().Be(meaning, example);
    }

    [Theory]
    [InlineData("2.7 Two Documents in a Stream", "# Ranking of 1998 home runs\n---\n- Mara Quill\n- Sten Oar\n\n# Team ranking\n---\n- Chandlers\n", 7, 1)]
    [InlineData("2.11 Mapping between Sequences", "? - Dockside\n  - Chandlers\n: - 2001-07-23\n", 1, 3)]
    [InlineData("2.23 Various Explicit Tags", "---\nnot-date: !!str 2002-04-28\n\npicture: !!binary |\n R0lGODlhDAAMAIQAAP//9/X17unp5WZmZgAAAOfn515eXv\n", 4, 10)]
    [InlineData("2.24 Global Tags", "%TAG ! tag:example.org,2002:\n--- !shape\na: 1\n", 2, 5)]
    [InlineData("6.12 Separation Spaces", "{ first: Sten, last: Oar }:\n# Statistics:\n  hr: 65\n", 1, 1)]
    [InlineData("5.10 Invalid use of Reserved Indicators", "commercial-at: @text\n", 1, 16)]
    [InlineData("5.10 Invalid use of Reserved Indicators", "grave-accent: `text\n", 1, 15)]
    [InlineData("5.14 Invalid Escaped Characters", "Bad escapes:\n  \"\\c\n  \\xq-\"\n", 2, 3)]
    [InlineData("merge keys, of the YAML 1.1 type repository", "a: &a { b: 1 }\nc:\n  <<: *a\n", 3, 3)]
    public void What_a_workflow_leaves_out_is_refused_with_its_place(string example, string yaml, int line, int column)
    {
        var reading = Reader.Read(new SourceText("example.yaml", yaml));
        reading.Findings.Should().ContainSingle(example).Which.Place.Should().Be(new Abstractions.Place("example.yaml", line, column));
    }

    /// <summary>Example 5.1 and §5.2: a byte order mark and each of the encodings a stream may have that we take.</summary>
    [Fact]
    public void A_byte_order_mark_says_the_encoding()
    {
        foreach (var encoding in new Encoding[] { new UTF8Encoding(false), new UTF8Encoding(true), new UnicodeEncoding(false, true), new UnicodeEncoding(true, true) })
        {
            var source = SourceText.Decode("example.yaml", [.. encoding.GetPreamble(), .. encoding.GetBytes("# Comment only.\nclé: ☺\n")]).Source!;
            Shape(Reader.Read(source).Tree!.Root).Should().Be("{clé=\"☺\"}");
        }
    }

    /// <summary>Example 5.11 and §5.4: line feed, carriage return and both together all end a line.</summary>
    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Every_line_end_is_one(string end)
    {
        var root = (MappingNode)Reader.Read(new SourceText("example.yaml", $"a: |{end}  one{end}  two{end}b: 2{end}")).Tree!.Root;
        Shape(root).Should().Be("{a=\"one\\ntwo\\n\", b=\"2\"}");
        root.Entries[1].Key.Line.Should().Be(4);
    }
}
