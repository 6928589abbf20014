using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Pipeline.Tests.Units.House;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>The schema accepts what binds and refuses what an editor should mark.</summary>
public class SchemaTests
{
    private static readonly JsonSchema House = JsonSchema.FromText(Schema.Generate(HouseTrade.Trade));
    private static readonly JsonSchema Test = JsonSchema.FromText(Schema.Generate(TestTrade.Trade));

    private static bool Accepts(JsonSchema schema, string yaml)
    {
        var reading = Reader.Read(new SourceText("crew.yaml", yaml));
        reading.Findings.Should().BeEmpty();
        return schema.Evaluate(JsonSerializer.SerializeToElement(Json(reading.Tree!.Root))).IsValid;
    }

    /// <summary>What an editor sees: plain scalars by the core schema of YAML 1.2.2 §10.3.2.</summary>
    private static JsonNode? Json(SyntaxNode node) => node switch
    {
        MappingNode mapping => new JsonObject(mapping.Entries.Select(entry => KeyValuePair.Create(entry.Key.Text, Json(entry.Value)))),
        ListNode list => new JsonArray([.. list.Items.Select(Json)]),
        TextNode { Style: TextStyle.Plain } plain => plain.Text switch
        {
            "" or "~" or "null" => null,
            "true" => true,
            "false" => false,
            var text when double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) => number,
            var text => text,
        },
        TextNode text => text.Text,
        _ => throw new InvalidOperationException(),
    };

    [Fact]
    public void It_is_a_schema_of_2020_12_and_is_the_same_each_time()
    {
        var text = Schema.Generate(HouseTrade.Trade);
        text.Should().Be(Schema.Generate(HouseTrade.Trade)).And.EndWith("}\n").And.NotContain("\r");
        using var document = JsonDocument.Parse(text);
        document.RootElement.GetProperty("$schema").GetString().Should().Be("https://json-schema.org/draft/2020-12/schema");
        MetaSchemas.Draft202012.Evaluate(document.RootElement).IsValid.Should().BeTrue();
    }

    [Theory]
    [InlineData("workflows/first.yaml")]
    [InlineData("workflows/tidewater.yaml")]
    [InlineData("workflows/harbour-fair.yaml")]
    [InlineData("workflows/together/lightship.yaml")]
    [InlineData("workflows/together/ferry-cats.yaml")]
    public void It_accepts_the_demo_files(string file) =>
        Accepts(House, File.ReadAllText(Path.Combine(Repository.Root, file))).Should().BeTrue();

    [Fact]
    public void It_accepts_every_file_of_the_house_that_binds()
    {
        var files = Repository.Files(".yaml").Where(file => file.StartsWith("workflows/", StringComparison.Ordinal)).ToList();
        files.Should().NotBeEmpty();
        foreach (var file in files)
        {
            var text = SourceText.Decode(file, File.ReadAllBytes(Path.Combine(Repository.Root, file))).Source;
            if (text is not null && Reader.Read(text).Tree is { } tree && Binder.Bind([tree], HouseTrade.Trade).Batch is not null)
                Accepts(House, text.Text).Should().BeTrue(file);
        }
    }

    [Theory]
    [InlineData("- coat: suit\n  with: harbour black\n  by: Airbrush\n  coats: 2\n  overspray: all\n  minutes: 12\n  set-up: 1 h 30 min\n  drying: { cured: 2-3 d, wash-safe: never }\n  at: 2026-12-05 10:00")]
    [InlineData("- mask: [glass, helmet]\n  using: LOW-TACK tape\n  as: lens\n- unmask: lens")]
    [InlineData("- everything: all\n  size: tiny\n  sets: 30 min - 1 h\n  warmth: -4 °C\n  liquid: white-spirit\n  until: touch-dry\n  wet-in-wet: yes\n  paints: [harbour black, rope bone]\n  number: 2.5\n  share: 40 %\n  volume: 7 mL\n  text: 12")]
    [InlineData("- glue: all\n  using: FOAM-SAFE superglue\n  drying: 12-24 h\n  allow: { mask-too-long: a reason }\n  together: no")]
    public void It_accepts_a_route_that_binds(string route)
    {
        Written.Route(route);
        Accepts(Test, Written.WithRoute(route)).Should().BeTrue();
    }

    [Theory]
    [InlineData("- caot: suit\n  with: harbour black")]
    [InlineData("- coat: suit")]
    [InlineData("- coat: suit\n  wiht: harbour black\n  with: harbour black")]
    [InlineData("- coat: suit\n  with: harbour black\n  by: brushing")]
    [InlineData("- coat: suit\n  with: harbour black\n  coats: 1.5")]
    [InlineData("- coat: suit\n  with: harbour black\n  set-up: 10")]
    [InlineData("- coat: suit\n  with: harbour black\n  drying: { dry: 2 h }")]
    [InlineData("- coat: suit\n  with: harbour black\n  at: tomorrow")]
    [InlineData("- coat: suit\n  with: harbour black\n  clean: suit")]
    [InlineData("- everything: all\n  size: 30")]
    [InlineData("- everything: all\n  volume: 30 cm²")]
    [InlineData("- everything: all\n  warmth: 19 C")]
    [InlineData("- clean: all\n  allow: { no-such-rule: because }")]
    [InlineData("- as: nothing")]
    [InlineData("- clean:")]
    public void It_refuses_a_route_that_does_not(string route)
    {
        Written.Bind(Written.WithRoute(route)).Batch.Should().BeNull();
        Accepts(Test, Written.WithRoute(route)).Should().BeFalse();
    }

    [Theory]
    [InlineData("batch: Crew", "batches: Crew")]
    [InlineData("zone: Europe/Lisbon", "zone: { a: b }")]
    [InlineData("days: mon-fri", "days: mon-fry")]
    [InlineData("from: 19:00", "from: 19")]
    [InlineData("family: waterborne acrylic", "sheen: matt")]
    [InlineData("colour: \"#0c0d10\"", "colour: black")]
    [InlineData("count: 3", "count: 10000")]
    [InlineData("suit: 30 cm²", "suit: 30")]
    [InlineData("kit: Divers", "kits: Divers")]
    public void It_refuses_a_file_with_one_thing_wrong(string right, string wrong)
    {
        var file = Written.WithRoute("- clean: all");
        Accepts(Test, file).Should().BeTrue();
        Accepts(Test, file.Replace(right, wrong, StringComparison.Ordinal)).Should().BeFalse();
    }
}
