namespace CookAlong.Web.Features.Problems;

/// <summary>What a person is told when a page cannot be shown.</summary>
public sealed record Problem(string Title, string Remedy)
{
    /// <param name="status">An HTTP status code of 400 or more.</param>
    public static Problem Of(int status) => status switch
    {
        400 => new("That did not come through whole", "The page may have been open too long. Go back, reload it and try again."),
        401 => new("You are signed out", "Sign in again, or join the meal with its code."),
        403 => new("That is not open to you", "The host cook can do it, or let you in."),
        404 => new("There is no such page", "It may have been moved or removed, or the address has a slip in it."),
        413 => new("That is too large", $"This server takes at most {Security.RequestSize.Largest / 1024 / 1024} MB at a time. A meal file is far smaller; check that it is the right file."),
        421 => new("This server does not go by that name", "Use its address, or have the name added to the setting --hosts (COOKALONG_HOSTS)."),
        429 => new("That was too much at once", "Wait a minute and try again. What was kept before is safe."),
        < 500 => new("That cannot be done here", $"The server answered {status}. Go back and try another way."),
        _ => new("Something went wrong on the server", "It has been written to the server's log. What you did before is kept. Try again in a moment."),
    };
}
