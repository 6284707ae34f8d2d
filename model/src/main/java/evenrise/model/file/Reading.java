package evenrise.model.file;

import evenrise.model.project.TakenDefault;
import java.util.List;
import java.util.Optional;

/**
 * What came of reading a file.
 *
 * @param value what the file says; empty if any problem is an error
 * @param problems every problem, by place
 * @param sha256 SHA-256 of the bytes read, in lower-case hexadecimal; of no bytes where none could be read
 * @param notes what the file says beside its format; none where there is no value
 * @param taken what became of each field of a project's defaults; none of another file
 */
public record Reading<T>(
        Optional<T> value, List<Problem> problems, String sha256, SideNotes notes, List<TakenDefault> taken) {
    public Reading {
        problems = List.copyOf(problems);
        taken = List.copyOf(taken);
    }
}
