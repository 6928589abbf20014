using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Engine;

public sealed class PluginsTests : IDisposable
{
    private static readonly string Contract = typeof(Verb).Assembly.Location;
    private readonly string folder = Directory.CreateTempSubdirectory("plugins").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_plugin_brings_verbs_rules_and_rows_sorted_by_name()
    {
        Lay("Shells", PluginSource.Verb("polish", "B"), PluginSource.Verb("knock", "A"), PluginSource.Rule("calm-sea", "CalmSea", "return [];"), Seawood("seawood"));

        var trade = LoadsWithout();

        trade.Verbs.Select(verb => (verb.Plugin, verb.Item.Name)).Should().Equal(("Shells", "knock"), ("Shells", "polish"));
        trade.Rules.Should().ContainSingle().Which.Item.Name.Should().Be("calm-sea");
        trade.Materials.Should().ContainSingle().Which.Item.Name.Should().Be("seawood");
    }

    [Fact]
    public void A_class_that_is_not_public_or_not_sealed_is_not_offered()
    {
        Lay("Shells", PluginSource.Verb("knock").Replace("public sealed class", "public class"), PluginSource.Verb("polish", "B").Replace("public sealed class", "sealed class"));

        LoadsWithout().Verbs.Should().BeEmpty();
    }

    [Fact]
    public void A_file_that_is_not_an_assembly_is_named_and_the_rest_works()
    {
        Lay("Shells", PluginSource.Verb("knock"));
        File.WriteAllText(Lay("Wreck", PluginSource.Verb("sink")), "barnacles");

        LoadsWith("The plugin Wreck cannot be used: the file is damaged or is not a .NET assembly.").Verbs.Should().ContainSingle();
    }

    [Fact]
    public void An_assembly_cut_short_is_named()
    {
        var file = Lay("Wreck", PluginSource.Verb("sink"));
        File.WriteAllBytes(file, File.ReadAllBytes(file)[..1024]);

        LoadsWith("The plugin Wreck cannot be used: *");
    }

    [Fact]
    public void An_empty_file_is_named()
    {
        File.WriteAllBytes(Lay("Wreck", PluginSource.Verb("sink")), []);

        LoadsWith("The plugin Wreck cannot be used: the file is damaged or is not a .NET assembly.");
    }

    [Fact]
    public void A_damaged_list_of_dependencies_is_named()
    {
        File.WriteAllText(Path.ChangeExtension(Lay("Wreck", PluginSource.Verb("sink")), ".deps.json"), "{ not json");

        LoadsWith("The plugin Wreck cannot be used: *");
    }

    [Theory]
    [InlineData("9.0.0.0")]
    [InlineData("1.999.0.0")]
    [InlineData("0.1.0.0")]
    public void A_plugin_for_another_contract_is_named_with_both_versions(string version)
    {
        Lay("Shells", PluginSource.Verb("knock"));
        PluginSource.LayForContract(folder, "Distant", Version.Parse(version));

        LoadsWith(
            $"The plugin Distant cannot be used: it was built for version {Version.Parse(version).ToString(2)} of the contract, "
            + $"this program has {ContractVersion.OfProgram.ToString(2)}.").Verbs.Should().ContainSingle();
    }

    [Fact]
    public void A_second_copy_of_the_contract_beside_the_plugin_does_no_harm()
    {
        File.Copy(Contract, Path.Combine(Path.GetDirectoryName(Lay("Shells", PluginSource.Verb("knock")))!, "Pipeline.Abstractions.dll"));

        LoadsWithout().Verbs.Should().ContainSingle();
    }

    [Fact]
    public void A_constructor_that_throws_takes_its_whole_plugin_out_but_no_other()
    {
        Lay("Shells", PluginSource.Verb("knock"));
        Lay("Wreck", PluginSource.Verb("float", "A"), PluginSource.Verb("sink", "B", "public B() { throw new Exception(\"leak\\nbelow\"); }"));

        LoadsWith("The plugin Wreck cannot be used: its class B failed: leak below (Exception).")
            .Verbs.Should().ContainSingle().Which.Item.Name.Should().Be("knock");
    }

    [Fact]
    public void A_name_that_throws_or_cannot_be_written_is_named()
    {
        Lay("Wreck", PluginSource.Verb("sink").Replace("\"sink\"", "throw new NotSupportedException(\"no name\")"));
        Lay("Zebra", PluginSource.Verb("\\u001b[31mred"));

        Load().Findings.Select(finding => finding.Message).Should().Equal(
            "The plugin Wreck cannot be used: its class Tap failed: no name (NotSupportedException).",
            "The plugin Zebra cannot be used: its class Tap needs a name of lower-case words joined by hyphens.");
    }

    [Fact]
    public void A_table_that_throws_while_it_is_read_is_named()
    {
        Lay("Wreck", Seawood("seawood").Replace("return ", "if (1 > 0) throw new Exception(\"tide\"); return "));

        LoadsWith("The plugin Wreck cannot be used: its class Seawood failed: tide (Exception).");
    }

    [Fact]
    public void A_verb_of_two_plugins_is_used_once_and_both_are_named()
    {
        Lay("Anchor", PluginSource.Verb("knock"));
        Lay("Buoy", PluginSource.Verb("knock"), PluginSource.Verb("polish", "B"));

        var trade = LoadsWith("The plugins Anchor and Buoy both bring the verb 'knock'; that of Anchor is used.");

        trade.Verbs.Select(verb => (verb.Plugin, verb.Item.Name)).Should().Equal(("Anchor", "knock"), ("Buoy", "polish"));
    }

    [Fact]
    public void A_verb_twice_in_one_plugin_is_named()
    {
        Lay("Shells", PluginSource.Verb("knock", "A"), PluginSource.Verb("knock", "B"));

        LoadsWith("The plugin Shells cannot be used: it has two of the verb 'knock'.");
    }

    [Fact]
    public void A_constructor_with_parameters_is_named()
    {
        Lay("Shells", PluginSource.Verb("knock", "A", "public A(int loud) { }"));

        LoadsWith("The plugin Shells cannot be used: its class A has no public constructor without parameters.");
    }

    [Fact]
    public void A_folder_without_its_assembly_is_named()
    {
        Directory.CreateDirectory(Path.Combine(folder, "Hollow"));

        LoadsWith("The plugin Hollow cannot be used: the folder holds no Pipeline.Plugins.Hollow.dll.");
    }

    [Fact]
    public void A_plugin_found_in_two_folders_is_taken_from_the_first()
    {
        var second = Directory.CreateTempSubdirectory("plugins").FullName;
        Lay("Shells", PluginSource.Verb("knock"));
        PluginSource.Lay(second, "Shells", Contract, PluginSource.Verb("polish"));

        var (trade, findings) = PluginLoading.Load([folder, second]);

        trade.Verbs.Should().ContainSingle().Which.Item.Name.Should().Be("knock");
        findings.Should().ContainSingle().Which.Message.Should().Contain("already found");
    }

    [Fact]
    public void A_folder_that_is_not_there_holds_no_plugin()
    {
        var (trade, findings) = PluginLoading.Load([Path.Combine(folder, "nowhere")]);

        trade.Verbs.Should().BeEmpty();
        findings.Should().BeEmpty();
    }

    [Fact]
    public void The_file_can_be_replaced_while_the_plugin_is_in_use()
    {
        var file = Lay("Shells", PluginSource.Verb("knock"));
        var verb = LoadsWithout().Verbs[0].Item;

        File.Delete(file);

        verb.Summary.Should().Be("Taps the piece.");
    }

    [Fact]
    public void The_painters_own_folder_follows_the_base_directories()
    {
        PluginFolders.Usual("/opt/pipeline", name => name == "XDG_DATA_HOME" ? "/data" : "/home/jo", ["/more"])
            .Should().Equal("/opt/pipeline/plugins", "/data/pipeline/plugins", "/more");
        PluginFolders.Usual("/opt/pipeline", name => name == "HOME" ? "/home/jo" : null, [])
            .Should().Equal("/opt/pipeline/plugins", "/home/jo/.local/share/pipeline/plugins");
        PluginFolders.Usual("/opt/pipeline", name => name == "HOME" ? "/home/jo" : "relative", [])[1]
            .Should().Be("/home/jo/.local/share/pipeline/plugins", "a base directory that is not absolute is ignored");
    }

    private static string Seawood(string name) =>
        $$"""public sealed class Seawood : Catalogue<Material> { public override IEnumerable<Material> Entries { get { return [new Material { Name = "{{name}}", Source = "common practice" }]; } } }""";

    private string Lay(string name, params string[] code) => PluginSource.Lay(folder, name, Contract, code);

    private (Trade Trade, Sequence<Finding> Findings) Load() => PluginLoading.Load([folder]);

    private Trade LoadsWithout()
    {
        var (trade, findings) = Load();
        findings.Should().BeEmpty();
        return trade;
    }

    private Trade LoadsWith(string message)
    {
        var (trade, findings) = Load();
        var finding = findings.Should().ContainSingle().Which;
        finding.Message.Should().Match(message);
        finding.Level.Should().Be(Level.Error);
        finding.Remedy.Should().NotBeNullOrEmpty();
        finding.Message.Should().NotContain("\n").And.NotContain("   at ");
        return trade;
    }
}
