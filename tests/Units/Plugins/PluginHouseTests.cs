using System.Reflection;
using System.Text.RegularExpressions;
using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>What holds for everything any plugin of the house brings.</summary>
public sealed partial class PluginHouseTests
{
    [GeneratedRegex("^[a-z]+(-[a-z]+)*$")]
    private static partial Regex KebabCase();

    [Fact]
    public void Every_step_of_the_trade_has_its_verb() =>
        AllPlugins.Verbs.Select(verb => verb.Name).Should().BeEquivalentTo(
            "clean", "post-cure", "cut", "trim", "drill", "pin", "dry-fit", "fill", "sand", "glue", "join", "seal", "strip",
            "undercoat", "pre-shade", "coat", "clear-colour", "layer", "glaze", "dry-brush", "stain",
            "mask", "unmask",
            "decal", "soften",
            "filter", "wash", "panel-line", "sponge", "streak", "clean-back", "chipping-medium", "chip",
            "varnish",
            "texture", "scatter", "pigment", "rim",
            "cure", "wait", "photograph", "record", "touch-up", "test");

    [Fact]
    public void Verbs_are_named_once_in_kebab_case_and_summed_up_in_a_sentence()
    {
        AllPlugins.Verbs.Select(verb => verb.Name).Should().OnlyHaveUniqueItems();
        foreach (var verb in AllPlugins.Verbs)
        {
            verb.Name.Should().MatchRegex(KebabCase());
            verb.Summary.Should().EndWith(".", verb.Name).And.MatchRegex("^[A-Z]", verb.Name);
        }
    }

    [Fact]
    public void Every_key_of_every_verb_says_what_it_means()
    {
        foreach (var verb in AllPlugins.Verbs)
        {
            foreach (var key in verb.ParticularsType.GetConstructors()[0].GetParameters())
            {
                key.GetCustomAttribute<SaysAttribute>().Should().NotBeNull($"{verb.Name}: {key.Name}");
                key.GetCustomAttribute<SaysAttribute>()!.Meaning.Should().EndWith(".", $"{verb.Name}: {key.Name}");
            }
        }
    }

    [Fact]
    public void Every_row_of_every_table_names_its_source()
    {
        var sources = AllPlugins.Families.Select(row => (row.Name, row.Source))
            .Concat(AllPlugins.Materials.Select(row => (row.Name, row.Source)))
            .Concat(AllPlugins.MaskMaterials.Select(row => (row.Name, row.Source)))
            .Concat(AllPlugins.CleanOuts.Select(row => ("clean-outs", row.Source)))
            .Concat(AllPlugins.Compatibility.Select(row => ("compatibility", row.Source)))
            .Concat(AllPlugins.Rewetting.Select(row => ("re-wetting", row.Source)))
            .Concat(AllPlugins.Thinners.Select(row => (row.Name, row.Source)))
            .Concat(AllPlugins.Settings.Select(row => (row.Name, row.Source)))
            .Concat(AllPlugins.Figures.Select(row => (row.Name, row.Source)));
        foreach (var (name, source) in sources)
            source.Should().StartWith("common practice", name);
    }

    [Fact]
    public void No_two_rows_of_a_table_answer_to_one_name()
    {
        NamesOf(AllPlugins.Families.Select(row => (row.Name, row.AlsoCalled))).Should().OnlyHaveUniqueItems();
        NamesOf(AllPlugins.Materials.Select(row => (row.Name, row.AlsoCalled))).Should().OnlyHaveUniqueItems();
        NamesOf(AllPlugins.MaskMaterials.Select(row => (row.Name, row.AlsoCalled))).Should().OnlyHaveUniqueItems();

        static IEnumerable<string> NamesOf(IEnumerable<(string Name, Sequence<string> AlsoCalled)> rows) =>
            rows.SelectMany(row => row.AlsoCalled.With(row.Name)).Select(name => name.ToUpperInvariant());
    }

    [Fact]
    public void Cautions_are_one_text_per_name_everywhere_and_promise_nothing()
    {
        var cautions = VerbCases.All.SelectMany(@case => @case.Intend().Cautions).Distinct().ToList();
        cautions.Select(caution => caution.Name).Should().OnlyHaveUniqueItems();
        foreach (var caution in cautions)
        {
            caution.Name.Should().MatchRegex(KebabCase());
            caution.Text.Should().NotMatchRegex("(?i)\\bsafe(ly)?\\b", caution.Name);
            caution.Text.Length.Should().BeLessThan(220, caution.Name);
        }
    }

    [Theory]
    [InlineData("clean: all, with: isopropyl", "solvent-vapour", "waste")]
    [InlineData("clean: all, with: isopropyl (printed resin)", "skin-sensitiser", "waste", "solvent-vapour")]
    [InlineData("clean: all, ultrasonic: yes", "ultrasonic-bath")]
    [InlineData("post-cure: all", "ultraviolet-light", "skin-sensitiser", "waste")]
    [InlineData("trim: all", "blades", "harmful-dust")]
    [InlineData("sand: all, wet: no", "harmful-dust")]
    [InlineData("glue: all", "superglue")]
    [InlineData("glue: all (styrene)", "solvent-vapour")]
    [InlineData("glue: all (fibreboard)")]
    [InlineData("fill: all", "skin-sensitiser")]
    [InlineData("undercoat: all, with: slate, by: airbrush", "spray-mist", "solvent-vapour")]
    [InlineData("undercoat: all, with: slate, by: aerosol", "spray-mist", "pressurised-can", "solvent-vapour")]
    [InlineData("coat: all, with: yellow, by: brush")]
    [InlineData("wash: all, with: umber, pin: yes", "solvent-vapour", "oily-rags")]
    [InlineData("clean-back: all, with: white spirit", "solvent-vapour", "waste", "oily-rags")]
    [InlineData("cure: all, to: mask-safe, heat: 40 °C", "heat")]
    [InlineData("mask: all, using: cut film, over: bands, as: stencil", "blades")]
    public void Work_that_can_hurt_shows_its_cautions(string step, params string[] cautions) =>
        VerbCases.All.Single(@case => @case.Says == step).Intend().Cautions.Select(caution => caution.Name).Should().Equal(cautions);
}
