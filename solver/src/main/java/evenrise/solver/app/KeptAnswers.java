package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.WriteFailed;
import evenrise.solver.grid.AnswerFolder;
import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.GridUnavailable;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Jobs whose answers are kept in a folder as they come: what has landed before is not done again, and what fails stops no
 * other.
 *
 * @param <T> what of an answer is kept in memory
 */
final class KeptAnswers<T> implements AutoCloseable {
    private final AnswerFolder answers;
    private final Function<byte[], Optional<T>> reader;
    private final Map<String, T> found = new LinkedHashMap<>();
    private final Map<String, String> failed = new LinkedHashMap<>();

    /** What an answer is called, and how it is told. */
    record Words<T>(String noun, Function<T, String> of) {}

    private KeptAnswers(AnswerFolder answers, Function<byte[], Optional<T>> reader) {
        this.answers = answers;
        this.reader = reader;
    }

    /**
     * @param ending of the files' names
     * @param reader empty where the bytes are no answer, as after a disk has failed: the job is done again then
     * @throws JobFailed where another run holds the folder, or it cannot be made
     */
    static <T> KeptAnswers<T> in(Path folder, String ending, Function<byte[], Optional<T>> reader) {
        try {
            return new KeptAnswers<>(
                    AnswerFolder.held(folder, ending)
                            .orElseThrow(() -> new JobFailed(
                                    JobFailed.Reason.OUTPUT,
                                    "another run works in '" + Harmless.shown(folder.toString())
                                            + "'. Wait for its end, or name another output.")),
                    reader);
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, String.valueOf(e.getMessage()));
        }
    }

    /** Takes what has landed before, and gives what is still to be done, each once. */
    List<GridJob> open(List<GridJob> wanted) {
        Map<String, GridJob> open = new LinkedHashMap<>();
        for (GridJob job : wanted) {
            Optional<T> earlier = answers.answer(job.key()).flatMap(reader);
            if (earlier.isPresent()) {
                found.put(job.key(), earlier.get());
            } else {
                open.put(job.key(), job);
            }
        }
        return List.copyOf(open.values());
    }

    /** @throws JobFailed where an answer cannot be kept, or the workers are lost; what has landed stays */
    void run(WorkGrid grid, List<GridJob> open, StopSignal stop, Words<T> words, Consumer<JobPart> told) {
        int all = found.size() + open.size();
        try {
            grid.run(open, (job, answer) -> told.accept(landed(job, answer, all, words)), stop);
        } catch (GridUnavailable e) {
            throw new JobFailed(
                    JobFailed.Reason.GRID,
                    e.getMessage() + " " + Phrase.counted(found.size(), words.noun())
                            + " of those asked for kept; the same command goes on.");
        }
    }

    private JobPart landed(GridJob job, GridAnswer answer, int all, Words<T> words) {
        Optional<T> read = answer instanceof GridAnswer.Done done ? reader.apply(done.output()) : Optional.empty();
        String said;
        if (answer instanceof GridAnswer.Done done && read.isPresent()) {
            keep(job.key(), done.output());
            found.put(job.key(), read.get());
            said = words.of().apply(read.get());
        } else {
            said = answer instanceof GridAnswer.Failed failure
                    ? failure.cause().words() + ": " + failure.words()
                    : "unexpected failure: what came back is no " + words.noun();
            failed.put(job.key(), said);
        }
        return new JobPart(found.size() + failed.size(), all, job.name(), said);
    }

    private void keep(String key, byte[] answer) {
        try {
            answers.land(key, answer);
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
    }

    Optional<T> found(String key) {
        return Optional.ofNullable(found.get(key));
    }

    /** How many have landed, in this run or before. */
    int landed() {
        return found.size();
    }

    /** Why there is no answer; empty where there is one, or the job was not come to. */
    Optional<String> failure(String key) {
        return Optional.ofNullable(failed.get(key));
    }

    /** Names and causes of those that failed. */
    List<String> failures(List<GridJob> wanted) {
        List<String> all = new ArrayList<>();
        for (GridJob job : wanted) {
            failure(job.key()).ifPresent(why -> all.add(job.name() + ": " + why));
        }
        return all;
    }

    /** Of an answer that has landed. */
    byte[] bytes(String key) {
        return answers.answer(key).orElseThrow();
    }

    /** Forgets all that has landed; a file that cannot be removed is found and used by the next run. */
    void clear() {
        try {
            answers.clear();
        } catch (IOException e) {
            return;
        }
    }

    @Override
    public void close() {
        try {
            answers.close();
        } catch (IOException e) {
            // Its lock ends with this process.
            return;
        }
    }
}
