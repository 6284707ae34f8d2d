package evenrise.solver.desk;

/** Loads, places, times, search and questions: the work on one plan. */
final class WorkRoutes implements DeskPart {
    private final DeskWork work;

    WorkRoutes(DeskWork work) {
        this.work = work;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.shown("/api/desk", "What lies on the desk", DeskAnswers.DeskSheet.class, work::sheet);
        routes.shown("/api/search", "The search in the background", DeskAnswers.SearchView.class, work::search);
        routes.shown(
                "/api/branches",
                "Plans that were kept, beside one another",
                DeskAnswers.BranchesView.class,
                work::branches);
        for (String list : TableWork.LISTS) {
            routes.shown(
                    "/api/list/" + list, "The list of " + list, DeskAnswers.TableView.class, () -> work.table(list));
        }
        routes.asked(
                "/api/hang",
                "A load is in the hand: what each free place would break or cost",
                DeskRequests.Hang.class,
                DeskAnswers.HangingView.class,
                work::hang);
        routes.asked(
                "/api/try",
                "What one place would break or cost",
                DeskRequests.Move.class,
                DeskAnswers.HangingView.class,
                work::tried);
        routes.asked(
                "/api/move", "A load is put down", DeskRequests.Move.class, DeskAnswers.DeskSheet.class, work::move);
        routes.asked(
                "/api/moves",
                "A change file that came back from a page of this plan is taken in",
                DeskRequests.ReturnedMoves.class,
                DeskAnswers.DeskSheet.class,
                work::takeMoves);
        routes.asked(
                "/api/setting",
                "A board is set otherwise",
                DeskRequests.Setting.class,
                DeskAnswers.DeskSheet.class,
                work::set);
        routes.asked(
                "/api/cells",
                "Cells of a list are edited, entries added or taken out",
                DeskRequests.Cells.class,
                DeskAnswers.EditedView.class,
                work::edit);
        routes.asked(
                "/api/pin",
                "Places are pinned or set free",
                DeskRequests.Pin.class,
                DeskAnswers.DeskSheet.class,
                work::pin);
        routes.asked(
                "/api/undo",
                "The last change is taken back",
                DeskRequests.Bare.class,
                DeskAnswers.DeskSheet.class,
                any -> work.undo());
        routes.asked(
                "/api/redo",
                "The change taken back last is made again",
                DeskRequests.Bare.class,
                DeskAnswers.DeskSheet.class,
                any -> work.redo());
        routes.asked(
                "/api/search/begin",
                "A search begins at what lies on the desk",
                DeskRequests.Search.class,
                DeskAnswers.SearchView.class,
                work::begin);
        routes.asked(
                "/api/search/stop",
                "The search ends with the best that it has",
                DeskRequests.Bare.class,
                DeskAnswers.SearchView.class,
                any -> work.stop());
        routes.asked(
                "/api/search/take",
                "What the search found comes onto the desk",
                DeskRequests.Bare.class,
                DeskAnswers.DeskSheet.class,
                any -> work.take());
        routes.asked(
                "/api/branches/keep",
                "The plan on the desk is kept under a name",
                DeskRequests.Named.class,
                DeskAnswers.BranchesView.class,
                work::keep);
        routes.asked(
                "/api/branches/open",
                "A kept plan comes onto the desk",
                DeskRequests.Named.class,
                DeskAnswers.DeskSheet.class,
                work::open);
        routes.asked(
                "/api/branches/compare",
                "Two plans side by side: their figures, and every load and board that is otherwise",
                DeskRequests.Pair.class,
                DeskAnswers.SideBySide.class,
                work::compare);
        routes.asked(
                "/api/why",
                "Why a load is where it is, what a rule asks, what makes the peak",
                DeskRequests.Why.class,
                DeskAnswers.Lines.class,
                work::why);
        routes.asked(
                "/api/list",
                "A pasted equipment list is read; nothing is changed",
                DeskRequests.PastedList.class,
                DeskAnswers.ReadListView.class,
                work::read);
        routes.asked(
                "/api/list/take",
                "A pasted equipment list becomes the project",
                DeskRequests.PastedList.class,
                DeskAnswers.DeskSheet.class,
                work::takeList);
    }
}
