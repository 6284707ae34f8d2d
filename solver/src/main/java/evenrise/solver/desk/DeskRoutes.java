package evenrise.solver.desk;

import evenrise.model.answer.HandRefused;
import evenrise.model.file.Problem;
import evenrise.model.file.Reading;
import evenrise.model.file.RequestBody;
import evenrise.solver.app.JobFailed;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

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
            try {
                return answer.apply(isChange ? read(body) : asked.cast(new DeskRequests.Bare()));
            } catch (HandRefused e) {
                throw new JobFailed(JobFailed.Reason.REQUEST, e.getMessage());
            }
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
    private final Map<String, Function<String, Optional<DeskFace.Piece>>> pieces = new LinkedHashMap<>();

    DeskRoutes(List<DeskPart> parts) {
        parts.forEach(part -> part.offer(this));
    }

    /** Something that is looked at. */
    <B extends Record> void shown(String path, String meaning, Class<B> answered, Supplier<B> answer) {
        routes.put(
                "GET " + path,
                new Route<>(path, false, meaning, DeskRequests.Bare.class, answered, any -> answer.get()));
    }

    /** Something that is sent: a question with its parts, or a change. */
    <A extends Record, B extends Record> void asked(
            String path, String meaning, Class<A> asked, Class<B> answered, Function<A, B> answer) {
        routes.put("POST " + path, new Route<>(path, true, meaning, asked, answered, answer));
    }

    /** Pictures and pages below a path, made when they are looked at. */
    void pieces(String below, Function<String, Optional<DeskFace.Piece>> piece) {
        pieces.put(below, piece);
    }

    Optional<DeskFace.Piece> piece(String path) {
        return pieces.entrySet().stream()
                .filter(each -> path.startsWith(each.getKey()))
                .findFirst()
                .flatMap(each ->
                        each.getValue().apply(path.substring(each.getKey().length())));
    }

    Map<String, Route<?, ?>> all() {
        return routes;
    }

    Optional<Route<?, ?>> of(String method, String path) {
        return Optional.ofNullable(routes.get(method + " " + path));
    }
}
