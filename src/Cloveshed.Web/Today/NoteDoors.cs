using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Today;

/// <summary>POST /notes: something worth keeping, in words.</summary>
internal static class NoteDoors
{
    /// <summary>Characters: a page and a half.</summary>
    public const int Longest = 4000;

    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/notes", Write);

    private static IResult Write(HttpContext context, [FromForm] IFormCollection form, Viewer viewer, FactDesk desk)
    {
        Words<TodayWord> words = Words.Of<TodayWord>(viewer.Language);
        string text = form["text"].ToString().Trim();
        return text.Length is 0 or > Longest
            ? desk.Back(context, form, new Said(true, words[TodayWord.NoteEmpty]))
            : desk.Put(context, form, "today", (origin, id) => origin.Note(text, id), words[TodayWord.NoteKept]);
    }
}
