using Pipeline.Abstractions;
using Pipeline.Reports;
using Pipeline.Tests.Units.Workflows;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Rows;

/// <summary>The tables as people and programs read them.</summary>
public sealed class TablesPageTests
{
    private static readonly Sequence<TradeTable> House = TradeTables.Of(TablesOf.Trade(HouseTrade.Trade).Rows);

    [Fact]
    public void The_published_page_is_that_of_the_plugins_in_the_house() =>
        Golden.Of("docs/tables.md").ShouldBe(TablesMarkdown.Render(House));

    [Fact]
    public void Every_table_that_a_file_may_say_otherwise_is_shown_under_its_key() =>
        House.Select(table => table.Name).Should().Contain(TableForm.All.Select(form => form.Key.Name)).And.Contain("families");

    [Fact]
    public void A_rule_says_on_its_page_which_tables_it_goes_by()
    {
        var named = Rules.RulePage.All.SelectMany(page => page.Text.Split('\n').Where(line => line.StartsWith("Tables: ", StringComparison.Ordinal)))
            .SelectMany(line => line["Tables: ".Length..].Split(", ")).ToHashSet();
        // how long a clean-out takes is a matter of plans
        House.Select(table => table.Name).Should().BeEquivalentTo(named.Append("clean-outs"));
    }

    [Fact]
    public void Every_row_has_a_cell_for_each_head_and_a_source()
    {
        foreach (var table in House)
        {
            table.Heads[^1].Should().Be("source");
            table.Rows.AsEnumerable().Should().NotBeEmpty().And.OnlyContain(row => IsWhole(row, table), table.Name);
        }
    }

    [Fact]
    public void As_text_what_says_the_same_stands_together() =>
        TablesText.Render(House.Single(table => table.Name == "compatibility"), Pipeline.Reports.TextStyle.Plain).Should().Contain("""
            alcohol metallic
              over                                                      dry    cured
              waterborne acrylic, waterborne varnish, alcohol metallic  mist   mist     [1]
              acrylic lacquer, cellulose lacquer, lacquer varnish       fine   fine     [1]
              enamel, stain                                             never  mist     [1]
              oil                                                       never  barrier  [1]
            """);

    [Fact]
    public void As_json_every_row_stands_by_itself()
    {
        var json = System.Text.Json.JsonDocument.Parse(TablesJson.Render(House)).RootElement.GetProperty("tables").EnumerateArray()
            .Single(table => table.GetProperty("name").GetString() == "compatibility").GetProperty("rows").EnumerateArray().ToList();
        json.Should().HaveCount(HouseTrade.Trade.Compatibility.Count);
        json.Single(row => row.GetProperty("new-coat").GetString() == "lacquer varnish" && row.GetProperty("over").GetString() == "stain").EnumerateObject()
            .Select(cell => $"{cell.Name}: {cell.Value}").Should().Equal("new-coat: lacquer varnish", "over: stain", "dry: mist", "from: mask-safe", "cured: mist", "source: common practice");
    }

    [Fact]
    public void Of_two_rows_about_the_same_thing_the_later_is_shown()
    {
        CleanOutTime Row(double minutes, string source) => new(ToolChange.DarkToLight, new Attended(minutes), new Attended(minutes), source);
        var table = TradeTables.Of(new TableRows { CleanOuts = [Row(5, "common practice"), Row(3, "the file")] }).Single(each => each.Name == "clean-outs");
        table.Rows.Select(row => string.Join(", ", row)).Should().Equal("dark-to-light, 3 min, the file");
    }

    private static bool IsWhole(Sequence<string> row, TradeTable table) => row.Count == table.Heads.Count && row[^1].Length > 0;
}
