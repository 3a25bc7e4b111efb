"""Files and functions stay small enough to be read at one sitting."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LONGEST_FILE = 300
LONGEST_FUNCTION = 60

# Comments and literals, which may hold braces that open nothing.
NOT_CODE = re.compile(
    r"""//[^\n]*|/\*.*?\*/|R"(\w*)\(.*?\)\1"|"(?:\\.|[^"\\\n])*"|(?<!\w)'(?:\\.|[^'\\\n])+'""",
    re.DOTALL,
)
NO_HEAD = re.compile(r"\btemplate\s*<[^{};()]*>|\b(?:public|private|protected)\s*:")
SCOPE = re.compile(
    r"\s*(?:(?:inline|static|constexpr|typedef)\s+)*(?:namespace|struct|class|union|enum|extern)\b"
)
MEMBERS_FOLLOW = re.compile(r"\)\s*(?:noexcept\s*)?:(?!:)")


def blanked(text):
    """The code alone, every line where it was."""
    text = NOT_CODE.sub(lambda match: "\n" * match[0].count("\n"), text)
    return re.sub(r"^[ \t]*#(?:[^\n]*\\\n)*[^\n]*$", "", text, flags=re.MULTILINE)


def kind_of_brace(head, inside_function):
    """What an opening brace opens, from the text between it and the statement before."""
    head = NO_HEAD.sub("", head).rstrip()
    if inside_function:
        return "block"
    if SCOPE.match(head):
        return "scope"
    if MEMBERS_FOLLOW.search(head):
        return "function" if head.endswith((")", "}")) else "list"
    return "function" if re.search(r"\)[^=]*$", head) else "list"


def cpp_functions(text):
    """(first line, number of lines, head) of every function that is not inside another."""
    found, opened = [], []
    head, first, line = "", 1, 1
    for character in blanked(text):
        if character == "{":
            kind = kind_of_brace(head, any(brace[0] in {"function", "block"} for brace in opened))
            opened.append((kind, first if head.strip() else line, " ".join(head.split())))
            head = head + "{" if kind == "list" else ""
        elif character == "}":
            kind, first_of_body, head_of_body = opened.pop()
            if kind == "function":
                found.append((first_of_body, line - first_of_body + 1, head_of_body))
            head = head + "}" if kind == "list" else ""
        elif character == ";":
            head = ""
        else:
            first = first if head.strip() else line
            head += character
        line += character == "\n"
    return found


def python_functions(text):
    """(first line, number of lines, name) of every function."""
    return [
        (node.lineno, node.end_lineno - node.lineno + 1, node.name)
        for node in ast.walk(ast.parse(text))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    ]


def sources(*suffixes):
    return sorted(
        path
        for folder in ("cpp", "python")
        for path in (ROOT / folder).rglob("*")
        if path.suffix in suffixes
    )


def test_no_file_is_long():
    lengths = {
        str(path.relative_to(ROOT)): len(path.read_text("utf-8").splitlines())
        for path in sources(".cpp", ".hpp", ".py")
    }
    assert {path: lines for path, lines in lengths.items() if lines > LONGEST_FILE} == {}


@pytest.mark.parametrize(
    "functions, suffixes", [(cpp_functions, [".cpp", ".hpp"]), (python_functions, [".py"])]
)
def test_no_function_is_long(functions, suffixes):
    long = {
        f"{path.relative_to(ROOT)}:{line} {head}": lines
        for path in sources(*suffixes)
        for line, lines, head in functions(path.read_text("utf-8"))
        if lines > LONGEST_FUNCTION
    }
    assert long == {}


EXAMPLE = """
namespace a {
template <class T>
struct Pipe {
    Pipe(double bore) noexcept : bore_{bore}, area_{f(bore)} {
        check();
    }
    double bore_ = {};
    static constexpr Row table[] = {
        {"bore", [](const Pipe& p) { return p.bore_; }},  // }
    };
};
enum class Colour : int { red, green };
double area(double bore,
            double shaft = 0) {
    if (bore > 0) {
        return '{' + bore;
    }
    return 0;
}
}
"""


def test_functions_are_measured_from_head_to_closing_brace():
    lengths = {head.split("(")[0].split()[-1]: lines for _, lines, head in cpp_functions(EXAMPLE)}
    assert lengths["Pipe"] == 3
    assert lengths["area"] == 7


def test_a_long_function_is_caught():
    body = "    x += 1;\n" * LONGEST_FUNCTION
    assert cpp_functions(f"void grow() {{\n{body}}}\n")[0][1] > LONGEST_FUNCTION
    assert (
        python_functions("def grow(x):\n" + "    x += 1\n" * LONGEST_FUNCTION)[0][1]
        > LONGEST_FUNCTION
    )
