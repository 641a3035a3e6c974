using System.CommandLine;

namespace CookAlong.Web.Cli;

/// <summary>The one executable: a verb says what it does; without a verb it serves the household.</summary>
public static class CommandLine
{
    /// <param name="how">Where words and errors go; null = the terminal.</param>
    public static async Task<int> RunAsync(string[] args, InvocationConfiguration? how = null)
    {
        // The web host has its own answer to Ctrl+C, and an unexpected exception is a bug that should show its stack.
        how ??= new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
        var parsed = Root().Parse(args);
        var code = await parsed.InvokeAsync(how);

        // The parser's own code for a wrong argument is 1, which the planning verbs promise for something else.
        return parsed.Errors.Count > 0 ? ExitCode.BadInput : code;
    }

    public static RootCommand Root()
    {
        var root = new RootCommand(
            """
            CookAlong: a shared timeline for a big meal out of an ordinary kitchen.

            Without a verb it serves the household's web pages (as 'serve' does); the log then shows the address to open.
            Every setting is also read from the environment: --data from COOKALONG_DATA, --urls from COOKALONG_URLS, and so on.

            Examples:
              cookalong                                    serve on http://localhost:5080, data in ./data
              cookalong serve --urls http://0.0.0.0:8080   serve the whole home network
              cookalong backup --data /data                copy the running household safely
            """);

        ServeVerb.AddTo(root);
        root.Subcommands.Add(ServeVerb.Create());
        root.Subcommands.Add(PlanVerb.Create());
        root.Subcommands.Add(CheckVerb.Create());
        root.Subcommands.Add(SimulateVerb.Create());
        root.Subcommands.Add(SeedVerb.Create());
        root.Subcommands.Add(BackupVerb.Create());
        root.Subcommands.Add(RestoreVerb.Create());
        root.Subcommands.Add(HttpsVerb.Create());
        root.Subcommands.Add(DoctorVerb.Create());
        root.Subcommands.Add(ArchiveVerbs.Export());
        root.Subcommands.Add(ArchiveVerbs.Import());
        root.Subcommands.Add(MigrateVerb.Create());
        root.Subcommands.Add(HealthcheckVerb.Create());
        root.Subcommands.Add(SbomVerb.Create());
        return root;
    }
}
