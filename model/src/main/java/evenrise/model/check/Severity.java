package evenrise.model.check;

/** How bad a problem of an input file is. */
public enum Severity {
    /** The file is malformed or contradicts itself: nothing is planned. */
    ERROR,
    /** The file is well formed, but no plan can keep every hard rule. */
    IMPOSSIBLE,
    /** Something is left out of account, and the file is read all the same. */
    REMARK
}
