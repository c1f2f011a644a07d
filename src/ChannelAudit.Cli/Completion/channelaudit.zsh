# Completion of channelaudit in zsh: the program itself is asked what can stand at the cursor; where it knows nothing, files are offered.
if ! (( $+functions[compdef] )); then
    autoload -Uz compinit && compinit
fi

_channelaudit() {
    local line="${words[2,CURRENT-1]} $PREFIX"
    local -a found
    found=(${(f)"$(channelaudit "[suggest:${#line}]" "$line" 2>/dev/null)"})
    if (( $#found )); then
        compadd -- $found
    else
        [[ $PREFIX == -*=* ]] && compset -P '*='
        _files
    fi
}
compdef _channelaudit channelaudit
