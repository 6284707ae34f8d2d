package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.event.EventScript;
import evenrise.model.event.ScriptEvent;
import evenrise.model.event.Trace;
import evenrise.model.file.Json;
import evenrise.model.file.Problem;
import evenrise.model.file.Reading;
import evenrise.model.file.ScriptFile;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.RehearseRequest;
import evenrise.solver.app.Source;
import evenrise.solver.desk.RehearsalAnswers.PlayedScript;
import evenrise.solver.desk.RehearsalAnswers.ScriptView;
import evenrise.solver.desk.RehearsalAnswers.ScriptsView;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Scripts of what happens: kept in the folder, and played on the plan as {@code rehearse} plays them. */
final class RehearsalWork implements DeskPart {
    private static final String ENDING = ".script.json";
    private static final int MOST_SCRIPTS = 100;
    private static final String UNNAMED = "this script";

    private final Desk desk;
    private final DeskFiles files;
    private final Jobs jobs;

    RehearsalWork(Desk desk, DeskFiles files, Jobs jobs) {
        this.desk = desk;
        this.files = files;
        this.jobs = jobs;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.asked(
                "/api/script/play",
                "A script is played on the plan; nothing is changed",
                RehearsalRequests.PlayScript.class,
                PlayedScript.class,
                this::play);
        routes.shown("/api/scripts", "Scripts in the folder", ScriptsView.class, this::scripts);
        routes.asked(
                "/api/script/open",
                "A script of the folder",
                DeskRequests.Named.class,
                ScriptView.class,
                asked -> open(asked.name()));
        routes.asked(
                "/api/script/keep",
                "A script is kept in the folder; one of that name is replaced",
                RehearsalRequests.KeepScript.class,
                ScriptsView.class,
                this::keep);
    }

    private PlayedScript play(RehearsalRequests.PlayScript asked) {
        DeskState state = desk.judged().state();
        Trace trace = jobs.rehearse(new RehearseRequest(
                        Source.of(state.project()),
                        Source.of(state.plan()),
                        Optional.of(Source.stream(bytes(UNNAMED, asked.events()), UNNAMED)),
                        List.of(),
                        asked.idle(),
                        Optional.empty()))
                .trace();
        return new ShownRehearsal(trace, asked).view();
    }

    private static ByteArrayInputStream bytes(String name, List<ScriptEvent> events) {
        return new ByteArrayInputStream(Json.of(new EventScript(name, events)).getBytes(StandardCharsets.UTF_8));
    }

    private ScriptsView scripts() {
        try (Stream<Path> all = Files.list(files.folder())) {
            return new ScriptsView(all.filter(Files::isRegularFile)
                    .map(each -> each.getFileName().toString())
                    .filter(each -> each.endsWith(ENDING))
                    .map(each -> each.substring(0, each.length() - ENDING.length()))
                    .filter(Branches::canBeNamed)
                    .sorted()
                    .limit(MOST_SCRIPTS)
                    .toList());
        } catch (IOException e) {
            return new ScriptsView(List.of());
        }
    }

    private ScriptView open(String name) {
        Reading<EventScript> read =
                ScriptFile.read(file(name), desk.judged().state().project());
        return new ScriptView(
                name,
                read.value()
                        .orElseThrow(() -> new JobFailed(
                                JobFailed.Reason.INPUT,
                                read.problems().stream().map(Problem::message).toList()))
                        .events());
    }

    private ScriptsView keep(RehearsalRequests.KeepScript asked) {
        Path file = file(asked.name());
        Reading<EventScript> read = ScriptFile.read(
                bytes(asked.name(), asked.events()),
                Harmless.shown(asked.name()),
                desk.judged().state().project());
        if (read.value().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    read.problems().stream().map(Problem::message).toList());
        }
        try {
            WholeFile.write(file, Json.of(read.value().get()) + "\n");
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
        return scripts();
    }

    private Path file(String name) {
        return files.folder().resolve(Branches.named(name) + ENDING);
    }
}
