using Pipeline.Abstractions;
using Pipeline.Plugins.Coats;
using Pipeline.Plugins.Decals;
using Pipeline.Plugins.Masking;
using Pipeline.Plugins.Preparing;
using static Pipeline.Tests.Units.Plugins.Bench;
using Families = Pipeline.Plugins.Coats.Families;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>What each verb does to a surface and costs at the bench.</summary>
public sealed class VerbTests
{
    public static TheoryData<string> Steps => new(VerbCases.All.Select(@case => @case.Says));

    [Theory, MemberData(nameof(Steps))]
    public void A_step_means_its_deeds_and_its_work(string step)
    {
        var @case = VerbCases.All.Single(each => each.Says == step);
        var intent = @case.Intend();
        Told.Deeds(intent).Should().Be(@case.Deeds);
        Told.Work(intent).Should().Be(@case.Work);
    }

    [Fact]
    public void Every_verb_has_a_case() =>
        VerbCases.All.Select(@case => @case.Verb.Name).Distinct().Should().BeEquivalentTo(AllPlugins.Verbs.Select(verb => verb.Name));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(21)]
    public void Coats_that_nobody_lays_are_refused_at_their_key(int coats) =>
        Refusal(new Coat(), new Coating(Pot("yellow", Families.WaterborneAcrylic), Method.Brush, coats), Six("resin")).Should().Be("coats");

    [Fact]
    public void Particulars_that_make_no_sense_are_refused_at_their_key()
    {
        Refusal(new Drill(), new Drilling(0), Six("resin")).Should().Be("holes");
        Refusal(new Pin(), new Pinning(501), Six("resin")).Should().Be("pins");
        Refusal(new Decal(), new Decaling(0), Six("resin")).Should().Be("count");
        Refusal(new Clean(), new Cleaning(Ultrasonic: true), Six("fibreboard")).Should().Be("ultrasonic");
        Refusal(new StripOff(), new Stripping(Soak: Drying.Hours(1)), Six("fibreboard")).Should().Be("with");
        Refusal(new StripOff(), new Stripping(), Six("resin")).Should().Be("with");
        Refusal(new Mask(), new MaskingOff(MaskOf("putty"), new MaskName("edge")), Six("resin").Named("edge")).Should().Be("over");
        Refusal(new Join(), new Joining(), Six("resin").Parts("body")).Should().Be("");
    }

    private static string Refusal(Verb verb, object particulars, Job job) =>
        verb.Invoking(it => it.Intend(job, particulars)).Should().Throw<ParticularException>().Which.Particular;
}
