"""Runs a program on a terminal of its own and answers its questions, each when it has been asked.

terminal.py ANSWERS FOLDER PROGRAM [WORD]...: ANSWERS is a JSON list of what is typed behind each prompt that ends in
"[y/N] ". Prints what was seen on the terminal and the status, as JSON.
"""
import json
import os
import pty
import re
import sys

answers, folder, *program = sys.argv[1:]
waiting = json.loads(answers)
child, terminal = pty.fork()
if child == 0:
    os.chdir(folder)
    os.execvp(program[0], program)

# On a line of its own: a prompt that is only drawn again is no other question.
PROMPT = re.compile(rb"\n[^\n]*\[y/N\] ")
seen = b"\n"
answered = 0
while True:
    try:
        piece = os.read(terminal, 4096)
    except OSError:  # The program has let go of the terminal.
        break
    if not piece:
        break
    seen += piece
    prompt = PROMPT.search(seen, answered)
    if prompt and waiting:
        answered = prompt.end()
        os.write(terminal, waiting.pop(0).encode())

_, ended = os.waitpid(child, 0)
said = re.sub(r"\x1b\[[0-9;?]*[A-Za-z]", "", seen[1:].decode()).replace("\r", "")
print(json.dumps({"status": os.waitstatus_to_exitcode(ended), "said": said}))
