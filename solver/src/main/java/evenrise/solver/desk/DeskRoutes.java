package evenrise.solver.desk;

import evenrise.model.file.Problem;
import evenrise.model.file.Reading;
import evenrise.model.file.RequestBody;
import evenrise.solver.app.JobFailed;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Everything that a window can ask for: one table, from which requests are answered and the interface is described. */
final class DeskRoutes {
    /**
     * One thing to ask for.
     *
     * @param isChange whether it is sent by POST
     * @param asked what is sent
     * @param answered what comes back
     */
    record Route<A extends Record, B extends Record>(
            String path, boolean isChange, String meaning, Class<A> asked, Class<B> answered, Function<A, B> answer) {
        Record answer(byte[] body) {
            return answer.apply(isChange ? read(body) : asked.cast(new DeskRequests.Bare()));
        }

        private A read(byte[] body) {
            Reading<A> reading = RequestBody.read(body, asked);
            return reading.value()
                    .orElseThrow(() -> new JobFailed(
                            JobFailed.Reason.REQUEST,
                            reading.problems().stream().map(Problem::message).toList()));
        }
    }

    private final Map<String, Route<?, ?>> routes = new LinkedHashMap<>();

    DeskRoutes(DeskWork work) {
        shown("/api/desk", "What lies on the desk", DeskAnswers.DeskSheet.class, work::sheet);
        shown("/api/search", "The search in the background", DeskAnswers.SearchView.class, work::search);
        shown(
                "/api/branches",
                "Plans that were kept, beside one another",
                DeskAnswers.BranchesView.class,
                work::branches);
        for (String list : DeskWork.LISTS) {
            shown("/api/list/" + list, "The list of " + list, DeskAnswers.TableView.class, () -> work.table(list));
        }
        asked(
                "/api/hang",
                "A load is in the hand: what each free place would break or cost",
                DeskRequests.Hang.class,
                DeskAnswers.HangingView.class,
                work::hang);
        asked(
                "/api/try",
                "What one place would break or cost",
                DeskRequests.Move.class,
                DeskAnswers.HangingView.class,
                work::tried);
        asked("/api/move", "A load is put down", DeskRequests.Move.class, DeskAnswers.DeskSheet.class, work::move);
        asked(
                "/api/setting",
                "A board is set otherwise",
                DeskRequests.Setting.class,
                DeskAnswers.DeskSheet.class,
                work::set);
        asked(
                "/api/cells",
                "Cells of a list are edited, entries added or taken out",
                DeskRequests.Cells.class,
                DeskAnswers.EditedView.class,
                work::edit);
        asked(
                "/api/pin",
                "Places are pinned or set free",
                DeskRequests.Pin.class,
                DeskAnswers.DeskSheet.class,
                work::pin);
        asked(
                "/api/undo",
                "The last change is taken back",
                DeskRequests.Bare.class,
                DeskAnswers.DeskSheet.class,
                any -> work.undo());
        asked(
                "/api/redo",
                "The change taken back last is made again",
                DeskRequests.Bare.class,
                DeskAnswers.DeskSheet.class,
                any -> work.redo());
        asked(
                "/api/search/begin",
                "A search begins at what lies on the desk",
                DeskRequests.Search.class,
                DeskAnswers.SearchView.class,
                work::begin);
        asked(
                "/api/search/stop",
                "The search ends with the best that it has",
                DeskRequests.Bare.class,
                DeskAnswers.SearchView.class,
                any -> work.stop());
        asked(
                "/api/search/take",
                "What the search found comes onto the desk",
                DeskRequests.Bare.class,
                DeskAnswers.DeskSheet.class,
                any -> work.take());
        asked(
                "/api/branches/keep",
                "The plan on the desk is kept under a name",
                DeskRequests.Named.class,
                DeskAnswers.BranchesView.class,
                work::keep);
        asked(
                "/api/branches/open",
                "A kept plan comes onto the desk",
                DeskRequests.Named.class,
                DeskAnswers.DeskSheet.class,
                work::open);
        asked(
                "/api/why",
                "Why a load is where it is, what a rule asks, what makes the peak",
                DeskRequests.Why.class,
                DeskAnswers.Lines.class,
                work::why);
        asked(
                "/api/list",
                "A pasted equipment list is read; nothing is changed",
                DeskRequests.PastedList.class,
                DeskAnswers.ReadListView.class,
                work::read);
        asked(
                "/api/list/take",
                "A pasted equipment list becomes the project",
                DeskRequests.PastedList.class,
                DeskAnswers.DeskSheet.class,
                work::takeList);
    }

    private interface Shown<B> {
        B get();
    }

    private <B extends Record> void shown(String path, String meaning, Class<B> answered, Shown<B> answer) {
        routes.put(
                "GET " + path,
                new Route<>(path, false, meaning, DeskRequests.Bare.class, answered, any -> answer.get()));
    }

    private <A extends Record, B extends Record> void asked(
            String path, String meaning, Class<A> asked, Class<B> answered, Function<A, B> answer) {
        routes.put("POST " + path, new Route<>(path, true, meaning, asked, answered, answer));
    }

    Map<String, Route<?, ?>> all() {
        return routes;
    }

    Optional<Route<?, ?>> of(String method, String path) {
        return Optional.ofNullable(routes.get(method + " " + path));
    }
}
