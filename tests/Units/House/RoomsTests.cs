namespace Pipeline.Tests.Units.House;

/// <summary>References point one way along the line, and each outside library has one home.</summary>
public sealed class RoomsTests
{
    private static readonly Dictionary<string, string[]> MayReference = new()
    {
        ["Abstractions"] = [],
        ["Workflows"] = ["Abstractions"],
        ["Surfaces"] = ["Abstractions", "Workflows"],
        ["Scheduling"] = [],
        ["Planning"] = ["Abstractions", "Workflows", "Surfaces", "Scheduling"],
        ["Reports"] = ["Abstractions", "Workflows", "Surfaces", "Planning"],
        ["Engine"] = ["Abstractions", "Workflows", "Surfaces", "Planning", "Reports"],
        ["Cli"] = ["Engine", "Reports"],
    };

    private static readonly Dictionary<string, string[]> Homes = new()
    {
        ["YamlDotNet"] = ["Workflows"],
        ["NodaTime"] = ["Workflows", "Planning", "Reports", "Engine"],
        ["Stateless"] = ["Surfaces"],
        ["Google.OrTools"] = ["Scheduling"],
        ["Google.Protobuf"] = ["Scheduling"],
        ["Spectre.Console"] = ["Reports", "Cli"],
        ["McMaster.NETCore.Plugins"] = ["Engine"],
        ["MediatR"] = ["Engine"],
        ["Microsoft.Data.Sqlite"] = ["Engine"],
        ["Microsoft.Extensions.Hosting"] = ["Engine"],
        ["Serilog"] = ["Engine"],
        ["Serilog.Extensions.Hosting"] = ["Cli"],
        ["Serilog.Sinks.Console"] = ["Cli"],
        ["Serilog.Sinks.File"] = ["Cli"],
        ["Serilog.Formatting.Compact"] = ["Cli"],
        ["System.CommandLine"] = ["Cli"],
    };

    /// <summary>Look at the code of every room; no part of the program.</summary>
    private static readonly string[] Analyzers = ["Microsoft.CodeAnalysis.BannedApiAnalyzers", "Microsoft.CodeAnalysis.PublicApiAnalyzers"];

    [Fact]
    public void All_rooms_are_known_here() =>
        Directory.GetDirectories(Path.Combine(Repository.Root, "src")).Select(folder => Path.GetFileName(folder)["Pipeline.".Length..])
            .Should().BeEquivalentTo(Repository.Rooms);

    [Fact]
    public void References_point_one_way()
    {
        foreach (var room in Repository.Rooms)
        {
            var allowed = MayReference[room].Select(name => $"Pipeline.{name}");
            Repository.Room(room).References.Should().BeSubsetOf([.. allowed, "@(PluginProject)"], $"Pipeline.{room} may reference nothing else");
        }
    }

    [Fact]
    public void A_plugin_references_the_contract_alone()
    {
        Repository.Plugins().Should().NotBeEmpty();
        foreach (var plugin in Repository.Plugins())
        {
            plugin.References.Should().BeEmpty($"{plugin.Name} gets the contract from plugins/Directory.Build.props");
            plugin.Packages.Should().BeEmpty(plugin.Name);
        }

        Project.Load("plugins/Directory.Build.props").References.Should().Equal("Pipeline.Abstractions");
    }

    [Fact]
    public void No_room_before_the_command_knows_a_plugin()
    {
        foreach (var room in Repository.Rooms.Except(["Cli"]))
            File.ReadAllText(Path.Combine(Repository.Root, Repository.Room(room).File)).Should().NotContain("plugins/", room);
    }

    [Fact]
    public void Each_outside_library_has_its_home()
    {
        foreach (var room in Repository.Rooms)
        {
            foreach (var package in Repository.Room(room).Packages.Except(Analyzers))
                Homes.Should().ContainKey(package).WhoseValue.Should().Contain(room, $"{package} is not at home in Pipeline.{room}");
        }
    }

    [Fact]
    public void The_contract_needs_nothing_but_the_language() =>
        Repository.Room("Abstractions").Packages.Except(Analyzers).Should().BeEmpty();

    [Fact]
    public void Versions_are_said_in_one_place()
    {
        foreach (var file in Repository.Files(".csproj"))
        {
            File.ReadAllText(Path.Combine(Repository.Root, file))
                .Should().NotMatchRegex("PackageReference[^>]*Version=", $"{file} takes versions from Directory.Packages.props");
        }
    }
}
