package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.file.RecordersFile;
import evenrise.model.intake.RecorderColumns;
import evenrise.model.intake.Recorders;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** What was said of the columns of recordings, beside a project's file: said once, it holds for every recording with such headers. */
final class RecorderBook {
    private static final String PROJECT_ENDINGS = "(?i)(\\.project)?\\.(json|yaml|yml)$";
    private static final String ENDING = ".recorders.json";

    private final Optional<Path> file;
    private final Consumer<String> note;
    private final Recorders kept;

    private RecorderBook(Optional<Path> file, Consumer<String> note) {
        this.file = file;
        this.note = note;
        this.kept = file.filter(Files::exists)
                .map(path -> Inputs.told(path.toString(), RecordersFile.read(path), note)
                        .value()
                        .orElseThrow())
                .orElse(Recorders.NONE);
    }

    /**
     * @param project its file; where there is none, nothing is kept
     * @throws JobFailed where what was kept cannot be read
     */
    static RecorderBook besides(Optional<Path> project, Consumer<String> note) {
        return new RecorderBook(
                project.map(path ->
                        path.resolveSibling(path.getFileName().toString().replaceFirst(PROJECT_ENDINGS, "") + ENDING)),
                note);
    }

    /** What is said now first, then what was said before. */
    List<RecorderColumns> with(Optional<RecorderColumns> now) {
        return Stream.concat(now.stream(), kept.recorders().stream()).toList();
    }

    /** @throws JobFailed where nothing can be written */
    void keep(RecorderColumns said) {
        Recorders next = kept.and(said);
        if (file.isEmpty()) {
            note.accept("which columns are what is not kept, since the project is no file.");
        } else if (!next.equals(kept)) {
            Outputs.write(() -> RecordersFile.write(next, file.get()));
            note.accept("which columns are what is kept in "
                    + Harmless.shown(file.get().getFileName().toString())
                    + ", and holds for every recording with these headers.");
        }
    }
}
