using System.Text.RegularExpressions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

public class ReferenceTests
{
    [Fact]
    public void Every_key_and_every_verb_is_in_the_reference()
    {
        var page = Reference.Generate(TestTrade.Trade);

        Key[] keys =
        [
            .. FileForm.Keys, .. BenchBinder.Keys, .. SittingBinder.Keys, .. ClimateBinder.Keys, .. FamilyBinder.Keys, .. PaintBinder.Keys, .. MixBinder.Keys,
            .. MixBinder.ThinnerKeys, .. Schemes.Keys, .. KitBinder.KitKeys, .. ModelBinder.Keys, .. ModelBinder.AreaKeys, .. ModelBinder.PartKeys, .. StorageBinder.Keys, .. ProtectionBinder.Keys, .. StepReader.CommonKeys,
        ];
        keys.Should().OnlyContain(key => page.Contains($"| `{key.Name}` | "));
        page.Should().Contain("### coat\n\nLays colour. (coat; names areas)\n")
            .And.Contain("| `with` | What is laid. | paint or mix | must be given |")
            .And.Contain("| `by` |  | brush, airbrush, aerosol, sponge or hand | brush |")
            .And.Contain("| `until` |  | touch-dry, recoatable, handleable, mask-safe, wash-safe or cured | mask-safe |")
            .And.Contain("### unmask\n\nTakes masks off. (removal; names masks by their `as` names, or areas they lie on)\n")
            .And.Contain("`resin` (also `polyurethane resin`)")
            .And.NotContain("unsayable", "a verb that cannot be used is no help")
            .And.NotContain("\r");
    }

    [Fact]
    public void The_published_reference_and_schema_are_those_of_the_verbs_in_the_house()
    {
        Golden.Of("docs/workflow-reference.md").ShouldBe(Reference.Generate(HouseTrade.Trade));
        Golden.Of("docs/workflow.schema.json").ShouldBe(Schema.Generate(HouseTrade.Trade));
    }

    [Fact]
    public void Every_key_of_every_verb_of_the_house_says_what_it_means() =>
        Reference.Generate(HouseTrade.Trade).Split('\n').Where(line => Regex.IsMatch(line, @"^\| `[^`]*` \|  \|")).Should().BeEmpty();
}
