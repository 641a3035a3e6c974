using CookAlong.Web.Features.Api;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CookAlong.Web.Features.Problems;

/// <summary>Errors in words for people, never with details; the API's programs get problem details, other scripts the bare status.</summary>
static class ProblemFeature
{
    public static void UseProblemPages(this WebApplication app)
    {
        app.UseExceptionHandler(failed => failed.Run(AnswerAsync));
        app.UseStatusCodePages(context => AnswerAsync(context.HttpContext));
    }

    static Task AnswerAsync(HttpContext http) =>
        ApiFeature.IsAsked(http) ? ApiFeature.AnswerAsync(http)
        : http.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase) ? new RazorComponentResult<ProblemPage>(new { Problem = Problem.Of(http.Response.StatusCode) })
        {
            StatusCode = http.Response.StatusCode,
        }.ExecuteAsync(http)
            : Task.CompletedTask;
}
